// The app comes in two parts: the first screen and the demo's scenes, and behind them the rest. What is tapped before the rest
// has come waits for it, and where it does not come, that is said.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';

const REST = /second-\w+\.wasm/;

journey('what is tapped before the rest of the app has come waits for it', async ({ screen }) => {
  const release = await held(screen);
  await screen.open();
  await screen.tap('Look at the demo');
  await screen.see('4 · Mending the sail');
  await screen.tap('Days', 'link');
  await screen.see('One moment: the rest of the app is on its way.');
  await screen.see('4 · Mending the sail');
  release();
  await screen.page.getByRole('heading', { level: 1, name: 'Days' }).waitFor();
  await screen.unseen('One moment');
  assert.equal(await focused(screen), 'Days');
});

journey('whoever goes on while the rest is on its way is not called back', async ({ screen }) => {
  const release = await held(screen);
  await screen.open();
  await screen.tap('Days', 'link');
  await screen.see('One moment');
  await screen.tap('Scenes', 'link');
  await screen.see('No scene yet');
  release();
  await screen.unseen('One moment');
  await screen.see('No scene yet');
});

journey('a rest that does not come is said, and fetched when the network is back', async ({ screen }) => {
  screen.expectFault(/second-|Failed to fetch/);
  await screen.page.route(REST, (route) => route.abort());
  await screen.open();
  await screen.tap('Places', 'link');
  await screen.see('Not here yet');
  await screen.see('A part of the app has not arrived: is the network gone?');
  await screen.tap('Try again');
  await screen.page.waitForFunction(() => !document.querySelector('main button[disabled]'));
  await screen.see('Not here yet');
  await screen.tap('Scenes', 'link');
  await screen.see('No scene yet');
  await screen.tap('Places', 'link');
  await screen.see('Not here yet');
  await screen.page.unroute(REST);
  await screen.tap('Try again');
  await screen.page.getByRole('heading', { level: 1, name: 'Places' }).waitFor();
  await screen.page.waitForFunction(() => document.activeElement.textContent === 'Places');
});

journey('an address that needs the missing rest ends in a page, not in a white screen', async ({ screen, server }) => {
  screen.expectFault(/second-|Failed to fetch/);
  await screen.page.route(REST, (route) => route.abort());
  await screen.page.goto(`${server.address}#places`);
  await screen.see('A part of the app did not arrive whole.');
  await screen.see('No project is kept in this browser.');
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

/** The words that have the focus. */
async function focused({ page }) {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  return page.evaluate(() => document.activeElement.textContent);
}
