// What a visit takes, printed by ./dev bench: the first one on a slow phone's link and processor, a later one with no
// server, and the year's sheets of ten set-ups one after the other. Medians of five, each in a fresh profile.

import path from 'node:path';
import { startChromium } from './kit/browser.mjs';
import { PHONE, Screen } from './kit/screen.mjs';
import { sheetTime } from './kit/sheet.mjs';
import { Server } from './kit/server.mjs';

const DIST = process.env.DIST ?? path.resolve(import.meta.dirname, '../../dist');
const RUNS = 5;
/** 1.6 Mbit/s down and 750 kbit/s up, 150 ms there and back. */
const SLOW_LINK = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 0.75e6 / 8 };
const SLOWER = 4;

const browser = await startChromium();
console.log(`\n${`visits, median of ${RUNS}`.padEnd(66)} measured       hold`);
await first();
await later('a later visit with no server, to the app', 1, '≤ 700');
await later(`  the same, processor ${SLOWER}× slower`, SLOWER);
await sheets();
await browser.close();

/** The first visit: when there is something to read and tap, when the app stands, and what it fetched till then. */
async function first() {
  const runs = await repeated(async (screen, server) => {
    await watched(screen);
    const session = await screen.context.newCDPSession(screen.page);
    await session.send('Network.enable');
    await session.send('Network.emulateNetworkConditions', SLOW_LINK);
    await screen.slower(SLOWER);
    await screen.open();
    const { painted, stood, came } = await screen.page.evaluate(() => ({
      painted: performance.getEntriesByName('first-contentful-paint')[0].startTime,
      stood: window.stood,
      came: performance.getEntriesByType('resource').filter((each) => each.responseEnd <= window.stood).map((each) => each.name),
    }));
    const names = new Set(['index.html', ...came.map((address) => address.slice(server.address.length))]);
    const bytes = [...server.sent].reduce((sum, [name, each]) => sum + (names.has(name) ? each : 0), 0) / 1000;
    await screen.tap('Places', 'link');
    await screen.page.getByRole('heading', { level: 1, name: 'Places' }).waitFor();
    return [painted, stood, bytes, await screen.page.evaluate(() => performance.now())];
  });
  const [painted, stood, bytes, all] = medians(runs);
  say(`first visit, 1.6 Mbit/s, 150 ms, ${SLOWER}× slower: first screen, ms`, painted, '≤ 2000');
  say('  the app behind it (what was tapped counts then), ms', stood, '≤ 2000');
  say('  fetched until then, kB', bytes, '≤ 220');
  say('  any other page, tapped as soon as that, ms', all);
}

/** From the address to the app, out of what the worker has kept, with a project there. */
async function later(name, slower, hold) {
  const runs = await repeated(async (screen, server) => {
    await watched(screen);
    await screen.open('#demo');
    await screen.saved();
    await screen.keptOffline();
    await screen.reload();
    await server.stop();
    await screen.page.goto('about:blank');
    await screen.slower(slower);
    await screen.open();
    return [await screen.page.evaluate(() => window.stood)];
  });
  say(`${name}, ms`, medians(runs)[0], hold);
}

/** The sheets of the demo's first ten set-ups, whole pages from the tap to the drawing; of their search alone tells bench.mjs. */
async function sheets() {
  const runs = await repeated(async (screen) => {
    await screen.at('2027-03-01T12:00:00Z');
    await screen.open('#demo');
    await screen.see('4 · Mending the sail');
    const links = await screen.page.locator('a[href^="#set-up/"]').evaluateAll((all) => [...new Set(all.map((one) => one.hash.slice(8)))]);
    await screen.slower(SLOWER);
    let sum = 0;
    for (const id of links.slice(0, 10)) sum += await sheet(screen.page, id);
    return [sum, Math.min(10, links.length)];
  });
  const [sum, count] = medians(runs);
  say(`a year's sheet, the whole page, mean of ${count} set-ups, ${SLOWER}× slower, ms`, sum / count, '≤ 150');
}

async function sheet(page, id) {
  await page.evaluate((id) => { location.hash = `#set-up/${id}`; }, id);
  await page.getByText('Lens bearing').first().waitFor();
  return sheetTime(page, id);
}

/** Notes when the cover is gone, in the page's own time. */
function watched(screen) {
  return screen.page.addInitScript(() => {
    new MutationObserver(() => {
      if (!window.stood && document.querySelector('main') && !document.querySelector('#cover')) window.stood = performance.now();
    }).observe(document, { childList: true, subtree: true });
  });
}

/** Does `work` five times, each with a profile and a server of its own. */
async function repeated(work) {
  const runs = [];
  for (let run = 0; run < RUNS; run++) {
    const server = await new Server(DIST).start();
    const screen = await Screen.fresh(browser, server, PHONE);
    screen.context.setDefaultTimeout(60_000);
    runs.push(await work(screen, server));
    await screen.close();
    await server.stop();
  }
  return runs;
}

function medians(runs) {
  return runs[0].map((_, place) => runs.map((run) => run[place]).sort((one, other) => one - other)[Math.floor(runs.length / 2)]);
}

function say(name, number, hold = '') {
  console.log(`${name.padEnd(64)} ${number.toFixed(0).padStart(10)} ${hold.padStart(10)}`);
}
