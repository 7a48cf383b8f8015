// How smoothly a room follows the bearing slider: frames a second, and the time from a pointer's move to the changed
// drawing, in headless Chromium with its processor throttled to a quarter. That time is taken twice: from when the move
// comes to the page, and from when the browser has stamped it, which holds it back for its next frame (up to 17 ms).
// Prints, with the bars; fails only with FRAMES=must, since a busy machine is no slow app. Beside it the same drag on a page
// that does next to nothing: what this machine and browser give at best. `node tests/journeys/frames.mjs`, on the dist/
// that is there; THROTTLE=1 for no throttle.

import path from 'node:path';
import { startChromium } from './kit/browser.mjs';
import { PHONE, Screen } from './kit/screen.mjs';
import { Server } from './kit/server.mjs';

const THROTTLE = Number(process.env.THROTTLE ?? 4);
const SECONDS = 4;
/** How far the pointer runs before it turns, pixels. */
const WAY = 100;
const BARS = { frames: 50, latency: 20 };
const NOW = '2027-03-11T16:20:00Z';

/** A slider that moves one box and one line. */
const CONTROL = `<meta name="viewport" content="width=device-width">
<div class="room-paper" style="contain: strict; height: 300px"><svg viewBox="0 0 100 100"><path id="line" stroke="red" /></svg></div>
<div id="track" role="slider" aria-label="Wall faces" style="width: 350px; height: 40px; background: #ccc">
<div id="handle" style="contain: strict; position: relative; width: 20px; height: 40px; background: #333"></div></div>
<script>
  let asked = 0;
  track.addEventListener('pointermove', ({ clientX }) => {
    asked ||= requestAnimationFrame(() => {
      asked = 0;
      handle.style.left = clientX + 'px';
      line.setAttribute('d', 'M0 0L' + clientX / 4 + ' 100');
    });
  });
</script>`;

const server = await new Server(process.env.DIST ?? path.resolve(import.meta.dirname, '../../dist')).start();
const browser = await startChromium();
const control = await dragged(async ({ page }) => page.setContent(CONTROL));
const room = await dragged(async (screen) => {
  await screen.open('#demo');
  await screen.page.evaluate(() => { location.hash = '#room/loft'; });
});
await browser.close();
await server.stop();

console.log(`slider drag at ${THROTTLE}× throttle: ${room.sent} moves sent, ${room.moves} came, ${room.changes} frames changed the drawing`);
bar('frames a second while dragging', room.rate, '≥', BARS.frames, room.rate >= BARS.frames, control.rate);
bar('pointer move to changed drawing, 95 %, ms', room.page, '≤', BARS.latency, room.page <= BARS.latency, control.page);
bar('the same with the wait for the frame, 95 %, ms', room.p95, '≤', BARS.latency, room.p95 <= BARS.latency, control.p95);
bar('moves after the last changed frame', room.unseen, '≤', 0, room.unseen === 0, control.unseen);

/** Drags the slider of the page that `open` opens, and says how it followed. */
async function dragged(open) {
  const screen = await Screen.fresh(browser, server, { ...PHONE, hasTouch: false, isMobile: false });
  // Only the date is frozen: a clock put in place of the browser's would time the frames as well.
  await screen.context.addInitScript((at) => { Date.now = () => at; }, Date.parse(NOW));
  await open(screen);
  const slider = screen.page.getByRole('slider', { name: /Wall faces/ }).first();
  await slider.waitFor();
  await slider.scrollIntoViewIfNeeded();
  const box = await slider.boundingBox();
  const track = box.width > 100 ? box.x + 75 : box.x + box.width * 0.4;
  const session = await screen.page.context().newCDPSession(screen.page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: THROTTLE });
  await screen.page.evaluate(watch);
  const y = box.y + box.height / 2;
  await screen.page.mouse.move(box.x + box.width * 0.6, y);
  await screen.page.mouse.down();
  const began = Date.now();
  let sent = 0;
  while (Date.now() - began < SECONDS * 1000) {
    // Two pixels a move, to and fro: every move asks for another degree, so that each must change the drawing.
    const along = Math.abs(((2 * sent) % (2 * WAY)) - WAY);
    await screen.page.mouse.move(track + along, y);
    sent += 1;
  }
  await screen.page.mouse.up();
  await screen.page.waitForTimeout(500);
  const seen = await screen.page.evaluate(() => window.frames_seen());
  await screen.close();
  const p95 = (times) => times.toSorted((a, b) => a - b)[Math.floor(times.length * 0.95)] ?? Infinity;
  return { ...seen, sent, p95: p95(seen.latencies), page: p95(seen.inPage), rate: seen.frames / seen.seconds };
}

function bar(name, measured, sign, hold, holds, control) {
  const beside = `(a page with one line: ${control.toFixed(1)})`;
  console.log(`${name.padEnd(48)} ${measured.toFixed(1).padStart(8)} ${sign} ${hold} ${holds ? 'holds' : 'FAILS'} ${beside}`);
  if (!holds && process.env.FRAMES === 'must') process.exitCode = 1;
}

/** Runs in the page: counts frames, and times each move to the next change of the drawing. */
function watch() {
  const seen = { frames: 0, moves: 0, changes: 0, latencies: [], inPage: [], waiting: [], first: 0, last: 0 };
  addEventListener('pointermove', (event) => {
    if (event.buttons === 0) return;
    seen.moves += 1;
    seen.waiting.push([event.timeStamp, performance.now()]);
  }, { capture: true });
  new MutationObserver(() => {
    if (seen.waiting.length === 0) return;
    seen.changes += 1;
    for (const [sent, came] of seen.waiting.splice(0)) {
      seen.latencies.push(performance.now() - sent);
      seen.inPage.push(performance.now() - came);
    }
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
