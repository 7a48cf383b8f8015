// What only a browser can tell, printed by ./dev bench: the search against calls of the full method in one page, and the
// sheet of a year on a processor four times slower. Minimum of rounds that loop for 20 ms and longer.

import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { startChromium } from './kit/browser.mjs';
import { PHONE, Screen } from './kit/screen.mjs';
import { sheetTime } from './kit/sheet.mjs';
import { Server } from './kit/server.mjs';

const ROOT = path.resolve(import.meta.dirname, '../..');
/** Directions in one call of the full method's work: an hour's step through a year. */
const SPA_CALLS = 8760;

/** The page of the bench: our work, and the same hours of the same place by a library of the browsers' own world. */
const PAGE = `
  import init from './sky.js';
  import { AstroTime, Body, Equator, Horizon, Observer } from './astronomy.js';
  await init();
  const ours = window.work;
  const observer = new Observer(48.21, 16.37, 190);
  const begin = Date.parse('2026-01-01T00:00:00Z');
  const theirs = () => {
    let sum = 0;
    for (let hour = 0; hour < ${SPA_CALLS}; hour++) {
      const time = new AstroTime(new Date(begin + hour * 3_600_000));
      const { ra, dec } = Equator(Body.Sun, time, observer, true, true);
      const { azimuth, altitude } = Horizon(time, observer, ra, dec);
      sum += azimuth + altitude;
    }
    return sum;
  };
  window.work = (name) => (name === 'theirs' ? theirs() : ours(name));
  if (Math.abs(window.work('theirs') / window.work('hours') - 1) > 1e-4) throw new Error('they disagree');
  window.isReady = true;
`;

const browser = await startChromium();
console.log(`\n${'bar, in Chromium'.padEnd(58)}   measured       hold`);
await search();
await yearSheet();
await browser.close();

async function search() {
  const server = await new Server(path.join(ROOT, 'target/bench-web')).start();
  const astronomy = createRequire(import.meta.url).resolve('astronomy-engine');
  server.replaced.set('astronomy.js', await readFile(path.join(path.dirname(astronomy), 'esm/astronomy.js')));
  server.replaced.set('index.html', `<!doctype html><script type="module">${PAGE}</script>`);
  const page = await browser.newPage();
  await page.goto(server.address);
  await page.waitForFunction(() => window.isReady);
  const [spa, cold, warm, hours, theirs] = await least(page, ['spa', 'cold', 'warm', 'hours', 'theirs']);
  say('10 set-ups × year, cold, in SPA calls', cold / (spa / SPA_CALLS), '≤ 800');
  say('  the same in ms', cold);
  say('  warm, ms', warm);
  say('  one SPA call, µs', (spa / SPA_CALLS) * 1000);
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const [slower] = await least(page, ['cold']);
  say("  what a year's sheet of 10 set-ups asks, 4× slower, ms", slower, '≤ 150');
  say('bearing and height, npm astronomy-engine over ours with nodes', theirs / hours, '');
  await server.stop();
}

/** Milliseconds of one go of each, in turns, the least of many rounds. */
function least(page, names) {
  return page.evaluate((names) => {
    const best = names.map(() => Infinity);
    const time = (name) => {
      const began = performance.now();
      let goes = 0;
      do {
        if (Number.isNaN(window.work(name))) throw new Error(`no work is called ${name}`);
        goes += 1;
      } while (performance.now() - began < 20);
      return (performance.now() - began) / goes;
    };
    for (let round = 0; round < 40; round++) {
      names.forEach((name, place) => { best[place] = Math.min(best[place], time(name)); });
    }
    return best;
  }, names);
}

/** From the tap to the sheet with its days, on a phone's processor. */
async function yearSheet() {
  const server = await new Server(process.env.DIST ?? path.join(ROOT, 'dist')).start();
  const screen = await Screen.fresh(browser, server, PHONE);
  await screen.at('2027-03-01T12:00:00Z');
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.slower(4);
  let best = Infinity;
  for (let round = 0; round < 8; round++) {
    await screen.page.evaluate(() => { location.hash = '#set-up/set-up-4a'; });
    await screen.see('Best slots');
    best = Math.min(best, await sheetTime(screen.page, 'set-up-4a'));
  }
  say('sheet of a year, whole page from the tap, 4× slower, ms', best, '≤ 50');
  await screen.close();
  await server.stop();
}

function say(name, number, hold = '') {
  console.log(`${name.padEnd(58)} ${number.toFixed(number < 100 ? 2 : 0).padStart(10)} ${hold.padStart(10)}`);
}
