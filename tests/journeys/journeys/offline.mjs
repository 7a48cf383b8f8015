// The app without a network, and the way a newer build comes in.

import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { journey } from '../kit/journey.mjs';

journey('opens with the server stopped after one visit', async ({ screen, server }) => {
  await screen.open();
  await screen.keptOffline();
  await server.stop();
  await screen.reload();
  const again = await screen.secondTab();
  await again.page.goto(`${server.address}#places`);
  await again.started();
  assert.ok(await again.page.evaluate(() => document.fonts.load('16px "Atkinson Hyperlegible Next Variable"').then(() => true)));
});

journey('all that the worker keeps costs no more than was last reached', async ({ screen, server }) => {
  await screen.open();
  await screen.keptOffline();
  const total = [...server.sent.values()].reduce((sum, bytes) => sum + bytes, 0);
  console.log(`      first visit, worker's copies included: ${total} bytes of bodies`);
  assert.ok(total <= 1_257_000, `${total} bytes`);
});

journey('the files name no folder of the machine that built them', async ({ server }) => {
  const files = readdirSync(server.folder, { recursive: true, withFileTypes: true }).filter((each) => each.isFile());
  assert.ok(files.length > 10);
  for (const file of files) {
    const text = await readFile(path.join(file.parentPath, file.name), 'latin1');
    assert.doesNotMatch(text, /\/(home|root|Users)\/|\.cargo\//, file.name);
  }
});

journey('a newer build waits, and comes only to the tab that asks', async ({ screen, server }) => {
  await screen.open();
  await screen.keptOffline();
  await screen.reload();
  const other = await screen.secondTab();
  await other.open();
  await other.page.evaluate(() => { window.untouched = true; });
  const old = await screen.page.evaluate(() => window.slantlight.build);
  await publish(server, old, 'newer0build0');

  const offered = screen.page.evaluate(() => new Promise((resolve) => {
    window.addEventListener('slantlight-update', () => resolve(true), { once: true });
    navigator.serviceWorker.ready.then((registration) => registration.update());
  }));
  assert.equal(await offered, true);
  assert.equal(await screen.page.evaluate(() => window.slantlight.updateWaiting), true);
  await screen.reload();
  assert.equal(await screen.page.evaluate(() => window.slantlight.build), old, 'a reload alone must not swap');

  await screen.page.waitForFunction(() => window.slantlight.updateWaiting);
  await Promise.all([
    screen.page.waitForEvent('load'),
    screen.page.evaluate(() => window.slantlight.update()),
  ]);
  await screen.started();
  assert.equal(await screen.page.evaluate(() => window.slantlight.build), 'newer0build0');
  assert.equal(await other.page.evaluate(() => window.untouched), true);
});

journey('it can be installed: every icon is there in the size it claims', async ({ screen, server }) => {
  await screen.open();
  const icons = await screen.page.evaluate(async () => {
    const link = document.querySelector('link[rel=manifest]').href;
    const { icons, start_url } = await (await fetch(link)).json();
    if (!(await fetch(new URL(start_url, link))).ok) throw new Error('the start address is missing');
    return Promise.all(icons.map(async ({ src, sizes }) => {
      const image = new Image();
      image.src = new URL(src, link);
      await image.decode();
      return [sizes, `${image.naturalWidth}x${image.naturalHeight}`];
    }));
  });
  for (const [claimed, actual] of icons) if (claimed !== 'any') assert.equal(actual, claimed);
  assert.deepEqual(icons.map(([claimed]) => claimed), ['any', '192x192', '512x512', '512x512']);
  assert.ok(server.sent.has('manifest.webmanifest'));
});

journey('the worker keeps every file but pictures for the home screen', async ({ screen, server }) => {
  await screen.open();
  await screen.keptOffline();
  const kept = await screen.page.evaluate(async () => {
    const [name] = await caches.keys();
    const requests = await (await caches.open(name)).keys();
    return requests.map(({ url }) => url.slice(new URL('.', location.href).href.length));
  });
  const built = readdirSync(server.folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.(png|txt)$|^sw\.js$/.test(entry.name))
    .map((entry) => path.relative(server.folder, path.join(entry.parentPath, entry.name)));
  assert.deepEqual(kept.sort(), built.sort());
});

async function publish(server, old, name) {
  for (const file of ['index.html', 'sw.js']) {
    const text = await readFile(path.join(server.folder, file), 'utf8');
    server.replaced.set(file, text.replaceAll(old, name));
  }
}
