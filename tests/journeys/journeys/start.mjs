// The app arrives, and says plainly when it cannot.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { journey } from '../kit/journey.mjs';

journey('the app starts under a strict policy', async ({ screen }) => {
  await screen.open();
  assert.equal(await screen.page.title(), 'Slantlight');
  const policy = await screen.page.locator('meta[http-equiv=Content-Security-Policy]').getAttribute('content');
  assert.match(policy, /default-src 'none'/);
  assert.match(policy, /connect-src 'self'/);
  assert.doesNotMatch(policy, /unsafe-inline|unsafe-eval'? |https?:/);
});

journey('the first screen is there before the app, looks the same, and its taps count', async ({ screen, server, fresh }) => {
  const { page } = screen;
  const release = await beforeTheApp(screen);
  const first = [...server.sent].filter(([name]) => !/\.(wasm|woff2|png)$|sw\.js/.test(name));
  const needed = first.reduce((sum, [, bytes]) => sum + bytes, 0);
  console.log(`      first screen: ${needed} bytes of bodies`);
  assert.ok(needed > 0 && needed <= 220_000, `${needed} bytes`);
  const letters = () => page.evaluate(() => getComputedStyle(document.body).fontFamily);
  assert.doesNotMatch(await letters(), /Atkinson/, "the phone's own, so that nothing is drawn anew when the app comes");
  const before = await laidOut(page, '#doorstep');
  await screen.tap('Look at the demo');
  await screen.see('One moment');
  release();
  await screen.started();
  await page.waitForFunction(() => location.hash === '#scenes');

  const other = await fresh();
  await other.open();
  await other.page.waitForFunction(() => /Atkinson/.test(getComputedStyle(document.body).fontFamily));
  assert.deepEqual(before, await laidOut(other.page, '.shell'));
});

journey('a place pasted on the first screen is read, and the app waits for whoever is typing', async ({ screen, fresh }) => {
  const release = await beforeTheApp(screen);
  await screen.tap('Paste a place');
  release();
  await screen.page.waitForSelector('#cover ~ .shell', { state: 'attached' });
  await screen.type(/^Paste a place/, '40.6405, -8.6538');
  await screen.tap('Read the pasted place');
  await screen.started();
  await screen.see('Pasted: 40.6405 N 8.6538 W');
  await screen.tap('Add this place');
  await screen.page.waitForFunction(() => location.hash.startsWith('#location/'));

  const unclear = await fresh();
  const releaseIt = await beforeTheApp(unclear);
  await unclear.tap('Paste a place');
  await unclear.type(/^Paste a place/, '40,6 8,7');
  await unclear.tap('Read the pasted place');
  releaseIt();
  await unclear.see(/“40,6 8,7” can be read in two ways/);
  assert.equal(await unclear.value(/^Paste a place/), '40,6 8,7');
});

journey('a file chosen on the first screen is shown when the app is there', async ({ screen, fresh }) => {
  await screen.open('#demo');
  await screen.open('#projects');
  const { name, text } = await screen.download(() => screen.tap('Export'));

  const other = await fresh();
  const release = await beforeTheApp(other);
  await other.pick(() => other.tap('Open a project file'), name, text);
  release();
  await other.started();
  await other.tap('Take it in');
  await other.page.waitForFunction(() => location.hash === '#scenes');
  await other.saved();
});

/** Goes to the first screen while the app is held back; what comes back lets it through. */
async function beforeTheApp(screen) {
  let release;
  const held = new Promise((resolve) => { release = resolve; });
  await screen.page.route('**/*.wasm', async (route) => {
    await held;
    await route.continue();
  });
  await screen.page.goto(screen.server.address, { waitUntil: 'commit' });
  await screen.see('Sun through this window');
  return release;
}

/** Words and places of what can be tapped, and the drawing's paths; in our letters, which the doorstep leaves to the app. */
async function laidOut(page, within) {
  await page.evaluate(() => {
    document.documentElement.classList.remove('own-letters');
    return document.fonts.load('1em "Atkinson Hyperlegible Next Variable"').then(() => true);
  });
  return page.evaluate((within) => {
    const round = ({ x, y, width, height }) => [x, y, width, height].map(Math.round);
    const told = (one) => [one.textContent.trim(), ...round(one.getBoundingClientRect())];
    const shell = document.querySelector(within);
    return {
      taps: [...shell.querySelectorAll('[data-way], .tabs a, h1')].filter((one) => one.checkVisibility()).map(told),
      paths: [...shell.querySelectorAll('.drawing path')].map((path) => path.getAttribute('d')),
    };
  }, within);
}

journey('a script that is not ours is refused', async ({ screen }) => {
  screen.expectFault(/Content Security Policy/);
  await screen.open();
  const ran = await screen.page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.strangerRan = true';
    document.head.append(script);
    return window.strangerRan === true;
  });
  assert.equal(ran, false);
});

journey('without WebAssembly a page says so', async ({ screen, server }) => {
  await screen.page.addInitScript(() => delete window.WebAssembly);
  screen.expectFault(/WebAssembly/);
  await screen.page.goto(server.address);
  await screen.see('cannot run WebAssembly');
  await screen.see('No project is kept in this browser.');
});

journey('a damaged app file ends in a page, not in a white screen', async ({ screen, server }) => {
  const page = await readFile(path.join(server.folder, 'index.html'), 'utf8');
  const [, wasm] = page.match(/data-wasm="?\.\/([^" >]+)/);
  server.replaced.set('index.html', page.replace(/<link rel="preload"[^>]*>/, ''));
  server.replaced.set(wasm, 'these are not the bytes of an app');
  await screen.page.goto(server.address);
  await screen.see('did not arrive whole');
});

journey('a stop hands out the last copy and a report', async ({ screen }) => {
  await screen.open();
  await screen.page.evaluate(() => {
    const project = (title) => ({ format: 'slantlight-project', version: 1, id: 'p1', title });
    localStorage.setItem('slantlight-journey-1', JSON.stringify({ revision: 3, body: JSON.stringify(project('Older')) }));
    localStorage.setItem('slantlight-journey-2', JSON.stringify({ revision: 4, project: project('Newer') }));
    window.slantlight.failed('made to stop by a journey');
  });
  await screen.see('Something in the app went wrong');
  const { name, text } = await screen.download(() => screen.tap(/Newer/));
  assert.equal(name, 'Newer.txt');
  assert.equal(JSON.parse(text).title, 'Newer');
  assert.equal(await screen.page.getByText('Older').count(), 0);
  const report = await screen.value('Report');
  assert.match(report, /made to stop by a journey/);
  assert.doesNotMatch(report, /Newer|p1/);
});

journey('a promise nobody caught can be survived', async ({ screen }) => {
  screen.expectFault(/left alone/);
  await screen.open();
  await screen.page.evaluate(() => void Promise.reject(new Error('left alone')));
  await screen.see('Something the app asked of the browser went wrong');
  await screen.tap('Back to the app');
  assert.equal(await screen.page.locator('#failure').count(), 0);
});

journey('a place that another app shares reaches the app and leaves the address', async ({ screen, server }) => {
  await screen.page.goto(`${server.address}?title=Loft&text=40.6405%2C-8.6538`);
  await screen.started();
  await screen.see('Pasted: 40.6405 N 8.6538 W');
  assert.equal(new URL(screen.page.url()).search, '');
});
