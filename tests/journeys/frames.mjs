// How smoothly a room follows the bearing slider: frames a second, and the time from a pointer's move to the changed
// drawing, in headless Chromium with its processor throttled to a quarter. Prints, with the bars; fails only with
// FRAMES=must, since a busy machine is no slow app. `node tests/journeys/frames.mjs`, on the dist/ that is there.

import path from 'node:path';
import { startChromium } from './kit/browser.mjs';
import { PHONE, Screen } from './kit/screen.mjs';
import { Server } from './kit/server.mjs';

const THROTTLE = 4;
const SECONDS = 4;
/** How far the pointer runs before it turns, pixels. */
const WAY = 100;
const BARS = { frames: 50, latency: 20 };

const server = await new Server(process.env.DIST ?? path.resolve(import.meta.dirname, '../../dist')).start();
const browser = await startChromium();
const screen = await Screen.fresh(browser, server, { ...PHONE, hasTouch: false, isMobile: false });
await screen.at('2027-03-11T16:20:00Z');
await screen.open('#demo');
await screen.page.evaluate(() => { location.hash = '#room/loft'; });
const slider = screen.page.getByRole('slider', { name: /Wall faces/ }).first();
await slider.waitFor();
await slider.scrollIntoViewIfNeeded();
const box = await slider.boundingBox();
const session = await screen.page.context().newCDPSession(screen.page);
await session.send('Emulation.setCPUThrottlingRate', { rate: THROTTLE });
await screen.page.evaluate(watch);

const y = box.y + box.height / 2;
await screen.page.mouse.move(box.x + box.width * 0.6, y);
await screen.page.mouse.down();
const began = Date.now();
let moves = 0;
while (Date.now() - began < SECONDS * 1000) {
  // Two pixels a move, to and fro: every move asks for another degree, so that each must change the drawing.
  const along = Math.abs(((2 * moves) % (2 * WAY)) - WAY);
  await screen.page.mouse.move(box.x + box.width * 0.4 + along, y);
  moves += 1;
}
await screen.page.mouse.up();
await screen.page.waitForTimeout(500);
const seen = await screen.page.evaluate(() => window.frames_seen());
await screen.close();
await browser.close();
await server.stop();

const sorted = seen.latencies.toSorted((a, b) => a - b);
const p95 = sorted[Math.floor(sorted.length * 0.95)] ?? Infinity;
console.log(`slider drag at ${THROTTLE}× throttle: ${moves} moves sent, ${seen.moves} came, ${seen.changes} frames changed the drawing`);
bar('frames a second while dragging', seen.frames / seen.seconds, '≥', BARS.frames, seen.frames / seen.seconds >= BARS.frames);
bar('pointer move to changed drawing, 95 %, ms', p95, '≤', BARS.latency, p95 <= BARS.latency);
bar('moves after the last changed frame', seen.unseen, '≤', 0, seen.unseen === 0);

function bar(name, measured, sign, hold, holds) {
  console.log(`${name.padEnd(48)} ${measured.toFixed(1).padStart(8)} ${sign} ${hold} ${holds ? 'holds' : 'FAILS'}`);
  if (!holds && process.env.FRAMES === 'must') process.exitCode = 1;
}

/** Runs in the page: counts frames, and times each move to the next change of the drawing. */
function watch() {
  const seen = { frames: 0, moves: 0, changes: 0, latencies: [], waiting: [], first: 0, last: 0 };
  // The clock is frozen for the app alone; performance.timeOrigin's own is needed here.
  const now = () => new Event('x').timeStamp;
  addEventListener('pointermove', (event) => {
    if (event.buttons === 0) return;
    seen.moves += 1;
    seen.waiting.push(event.timeStamp);
  }, { capture: true });
  new MutationObserver(() => {
    if (seen.waiting.length === 0) return;
    seen.changes += 1;
    for (const at of seen.waiting.splice(0)) seen.latencies.push(now() - at);
  }).observe(document.querySelector('.room-paper'), { subtree: true, childList: true, attributes: true, characterData: true });
  const count = (at) => {
    if (seen.moves > 0) {
      seen.first ||= at;
      seen.frames += 1;
      seen.last = at;
    }
    requestAnimationFrame(count);
  };
  requestAnimationFrame(count);
  window.frames_seen = () => ({ ...seen, unseen: seen.waiting.length, seconds: (seen.last - seen.first) / 1000 });
}
