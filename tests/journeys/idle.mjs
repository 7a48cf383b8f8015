// What Now costs while nobody touches it: time of the page's tasks in 30 seconds, as the browser itself counts it. Twice:
// with minutes on the countdown, and in the last minutes, when each second shows. The bars: 150 ms as the processor is, and
// 2 % of a processor four times slower. Beside them the cost of a page that sets one word each second and does nothing
// else: less than that this machine and browser cannot give, and a throttled or busy one may give more than the bar alone.
// `node tests/journeys/idle.mjs` prints all and fails above a bar.

import path from 'node:path';
import { startChromium } from './kit/browser.mjs';
import { PHONE, Screen } from './kit/screen.mjs';
import { Server } from './kit/server.mjs';

const SECONDS = Number(process.env.SECONDS ?? 30);
/** Milliseconds in 30 seconds, by how much slower the processor is. */
const BARS = { 1: 150, 4: 600 };
const CASES = [
  ['minutes on the countdown', '2027-03-18T15:00:05Z'],
  ['seconds on the countdown', process.env.LAST ?? '2027-03-18T18:11:05Z'],
];
const CONTROL = `<meta name="viewport" content="width=device-width"><p id="clock" style="contain: strict; height: 50px; font-size: 40px">–</p>
<script>setInterval(() => { clock.firstChild.data = new Date().toISOString().slice(14, 19); }, 1000)</script>`;

const server = await new Server(process.env.DIST ?? path.resolve(import.meta.dirname, '../../dist')).start();
const browser = await startChromium();
for (const [rate, bar] of Object.entries(BARS)) {
  const most = bar * (SECONDS / 30);
  const control = await spentAtRest(rate, ({ page }) => page.setContent(CONTROL));
  console.log(`one word a second, ${rate}×: ${control.toFixed(0)} ms of tasks in ${SECONDS} s`);
  for (const [name, instant] of CASES) {
    const ms = await spentAtRest(rate, (screen) => openNow(screen, instant));
    const holds = ms <= most;
    console.log(`${name}, ${rate}×: ${ms.toFixed(0)} ms ≤ ${most.toFixed(0)} ${holds ? 'holds' : 'FAILS'}`);
    if (!holds) process.exitCode = 1;
  }
}
await browser.close();
await server.stop();

/** Now, with the clock running on from an instant: only its offset is ours. */
async function openNow(screen, instant) {
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
}

/** Milliseconds of tasks of the page that `open` opens. */
async function spentAtRest(rate, open) {
  const screen = await Screen.fresh(browser, server, PHONE);
  await open(screen);
  const session = await screen.context.newCDPSession(screen.page);
  await session.send('Performance.enable', { timeDomain: process.env.TICKS ?? 'timeTicks' });
  // A throttle of one is none, but would start the throttler.
  if (rate > 1) await session.send('Emulation.setCPUThrottlingRate', { rate: Number(rate) });
  await screen.page.waitForTimeout(4000);
  const before = await taskTime(session);
  await screen.page.waitForTimeout(SECONDS * 1000);
  const ms = 1000 * ((await taskTime(session)) - before);
  await screen.close();
  return ms;
}

/** Seconds in tasks, without those that answer this very question. */
async function taskTime(session) {
  const { metrics } = await session.send('Performance.getMetrics');
  const value = (wanted) => metrics.find(({ name }) => name === wanted)?.value ?? 0;
  return value('TaskDuration') - value('DevToolsCommandDuration');
}
