// What Now costs while nobody touches it: time of the page's tasks in 30 seconds on a processor four times slower, as
// the browser itself counts it. Twice: with minutes on the countdown, and in the last minutes, when each second shows.
// `node tests/journeys/idle.mjs` prints both and fails above the bar of 150 ms.

import path from 'node:path';
import { startChromium } from './kit/browser.mjs';
import { PHONE, Screen } from './kit/screen.mjs';
import { Server } from './kit/server.mjs';

const SECONDS = Number(process.env.SECONDS ?? 30);
const BAR_MS = 150 * (SECONDS / 30);
const CASES = [
  ['minutes on the countdown', '2027-03-18T15:00:05Z'],
  ['seconds on the countdown', process.env.LAST ?? '2027-03-18T18:11:05Z'],
];

const server = await new Server(process.env.DIST ?? path.resolve(import.meta.dirname, '../../dist')).start();
const browser = await startChromium();
let over = false;
for (const [name, instant] of CASES) {
  const spent = await spentAtRest(instant);
  over ||= spent.ms > BAR_MS;
  console.log(`${name} ("${spent.shows}"): ${spent.ms.toFixed(0)} ms of tasks in ${SECONDS} s, the bar is ${BAR_MS.toFixed(0)} ms`);
}
await browser.close();
await server.stop();
process.exitCode = over ? 1 : 0;

async function spentAtRest(instant) {
  const screen = await Screen.fresh(browser, server, PHONE);
  // The clock runs on from this instant: only its offset is ours.
  await screen.context.addInitScript((to) => {
    const now = Date.now.bind(Date);
    const offset = to - now();
    Date.now = () => now() + offset;
  }, Date.parse(instant));
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.page.evaluate(() => { location.hash = '#set-up/set-up-4a'; });
  await screen.see('Lens bearing');
  await screen.page.evaluate(() => { location.hash = '#now'; });
  await screen.see('The day');
  const session = await screen.context.newCDPSession(screen.page);
  await session.send('Performance.enable', { timeDomain: process.env.TICKS ?? 'timeTicks' });
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await screen.page.waitForTimeout(4000);
  const before = await taskTime(session);
  await screen.page.waitForTimeout(SECONDS * 1000);
  const ms = 1000 * ((await taskTime(session)) - before);
  const shows = await screen.page.locator('.now-number').textContent();
  await screen.close();
  return { ms, shows };
}

/** Seconds in tasks, without those that answer this very question. */
async function taskTime(session) {
  const { metrics } = await session.send('Performance.getMetrics');
  const value = (wanted) => metrics.find(({ name }) => name === wanted)?.value ?? 0;
  return value('TaskDuration') - value('DevToolsCommandDuration');
}
