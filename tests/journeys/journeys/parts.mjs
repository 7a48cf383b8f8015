// The app comes in two parts: the first screen and the demo's scenes, and behind them the rest. What is tapped before the rest
// has come waits for it, and where it does not come, that is said.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';

const REST = /second-\w+\.wasm/;
/** What may come before the app stands, bytes; our letters swap in after it. */
const BAR = 220_000;

journey('the app stands behind the first screen before the rest has come, and after little', async ({ screen, server }) => {
  const release = await held(screen);
  await screen.open();
  const came = [...server.sent].filter(([name]) => !name.endsWith('.woff2'));
  const bytes = came.reduce((sum, [, each]) => sum + each, 0);
  console.log(`      until the app stands: ${bytes} bytes of bodies`);
  assert.ok(came.some(([name]) => name.endsWith('_bg.wasm')) && bytes <= BAR, `${bytes} bytes`);
  release();
});

journey('what is tapped before the rest of the app has come waits for it', async ({ screen }) => {
  const release = await held(screen);
  await screen.open();
  await screen.tap('Look at the demo');
  await screen.see('4 · Mending the sail');
  await screen.tap('Days', 'link');
  await screen.see('One moment: the rest of the app is on its way.');
  assert.equal(await focused(screen), 'Not here yet');
  release();
  await screen.page.getByRole('heading', { level: 1, name: 'Days' }).waitFor();
  await screen.unseen('One moment');
  assert.equal(await focused(screen), 'Days');
});

journey('a room tapped on the first screen waits for the rest as well', async ({ screen, server }) => {
  const release = await held(screen);
  await screen.page.goto(`${server.address}#places`);
  await screen.see('One moment: the rest of the app is on its way.');
  release();
  await screen.page.getByRole('heading', { level: 1, name: 'Places' }).waitFor();
});

journey('whoever goes on while the rest is on its way is not called back', async ({ screen }) => {
  const release = await held(screen);
  await screen.open();
  await screen.tap('Days', 'link');
  await screen.see('One moment');
  await screen.tap('Scenes', 'link');
  await screen.see('No scene yet');
  await screen.control('Now', 'link').focus();
  release();
  await rest(screen);
  await screen.see('No scene yet');
  assert.equal(await focused(screen), 'Now');
});

journey('a rest that does not come is said, and fetched when the network is back', async ({ screen }) => {
  await missing(screen);
  await screen.open();
  await screen.tap('Places', 'link');
  await screen.see('Not here yet');
  await screen.see(/has not arrived: is the network gone/);
  await screen.tap('Try again');
  await screen.see(/has not arrived: is the network gone/);
  await screen.tap('Scenes', 'link');
  await screen.see('No scene yet');
  await screen.tap('Places', 'link');
  await screen.see('Not here yet');
  await screen.page.unroute(REST);
  await screen.tap('Try again');
  await screen.page.getByRole('heading', { level: 1, name: 'Places' }).waitFor();
  assert.equal(await focused(screen), 'Places');
  await screen.keptOffline();
});

journey('what is pasted waits for a rest that does not come, and is read when it has', async ({ screen }) => {
  await missing(screen);
  await screen.open();
  await screen.paste('38.7071, -9.1355');
  await screen.see(/has not arrived: is the network gone/);
  await screen.page.unroute(REST);
  await screen.tap('Try again');
  await screen.tap('Add this place');
  await screen.see('38.7071 N 9.1355 W');
});

journey('what is made before the rest of the app has come is kept when it has, and not called saved before', async ({ screen }) => {
  const release = await held(screen);
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.tap('Add a scene');
  await screen.see('Saving');
  assert.deepEqual(await records(screen), []);
  release();
  await screen.saved();
  assert.equal((await records(screen)).length, 1);
  await screen.page.reload();
  await screen.tap('Scenes', 'link');
  await screen.see('11 · Scene 11');
});

journey('where the rest does not come nothing is called saved, until it does', async ({ screen }) => {
  await missing(screen);
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.see('Not saved yet');
  await screen.see(/has not arrived: is the network gone/);
  await screen.page.unroute(REST);
  await screen.tap('Try again');
  await screen.saved();
  await screen.page.reload();
  await screen.see('4 · Mending the sail');
});

journey('what is kept and cannot be read without the missing rest ends in a page, not in a white screen', async ({ screen }) => {
  await screen.open('#demo');
  await screen.saved();
  await screen.keptOffline();
  await screen.page.evaluate(async () => {
    for (const worker of await navigator.serviceWorker.getRegistrations()) await worker.unregister();
    for (const name of await caches.keys()) await caches.delete(name);
  });
  await missing(screen);
  await screen.page.reload();
  await screen.see('A part of the app did not arrive whole.');
  await screen.page.unroute(REST);
  await screen.page.reload();
  await screen.see('4 · Mending the sail');
});

journey('a host that does not know what wasm is serves the app all the same', async ({ screen }) => {
  await screen.page.route(/\.wasm$/, async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, headers: { ...response.headers(), 'content-type': 'application/octet-stream' } });
  });
  await screen.open();
  await screen.tap('Places', 'link');
  await screen.page.getByRole('heading', { level: 1, name: 'Places' }).waitFor();
});

/** The rest of the app stays under way until it is released. */
async function held(screen) {
  let release;
  const released = new Promise((resolve) => { release = resolve; });
  await screen.page.route(REST, async (route) => {
    await released;
    await route.continue();
  });
  return release;
}

/** The rest of the app cannot be fetched. */
async function missing(screen) {
  screen.expectFault(/second-|Failed to fetch/);
  await screen.page.route(REST, (route) => route.abort());
}

/** Waits until the rest of the app has come. */
async function rest({ page }) {
  await page.waitForFunction(() => performance.getEntriesByType('resource').some(({ name }) => /second-\w+\.wasm/.test(name)));
  await page.waitForTimeout(300);
}

/** What lies on the quick shelf. */
function records({ page }) {
  return page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('slantlight-project-')));
}

/** The words that have the focus. */
async function focused({ page }) {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  return page.evaluate(() => document.activeElement.textContent);
}
