// The shot: a head that is turned, takes that must cut together, and a subject that moves. With the demo project.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';

const MARCH = '2027-03-11T17:28:00Z';

/** Opens a set-up of the demo, and a fold of it. */
async function opened(screen, setUp, fold) {
  await screen.at(MARCH);
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.page.evaluate((there) => { location.hash = there; }, `#set-up/${setUp}`);
  await screen.see(/works on \d+ days? a year/);
  await screen.page.getByText(fold, { exact: true }).tap();
}

/** The first slots as they are written. */
const slots = (screen) => screen.page.locator('.slot-clock').allTextContents();

journey('turning the head by twenty degrees changes the slots', async ({ screen }) => {
  await opened(screen, 'set-up-8a', 'Face');
  await screen.tap('triangle on the shadow cheek');
  const nose = screen.control('Nose points', 'slider');
  await nose.focus();
  await screen.see(/works on \d+ days? a year/);
  const before = await slots(screen);
  await screen.keys('PageUp', 'PageUp');
  await screen.see(/20° to camera (left|right)/);
  await screen.page.waitForFunction((was) => {
    const now = [...document.querySelectorAll('.slot-clock')].map((each) => each.textContent);
    return now.join() !== was;
  }, before.join());
  await screen.saved();
  await screen.reload();
  await screen.page.getByText('Face', { exact: true }).tap();
  await screen.see(/20° to camera (left|right)/);
});

journey('how long takes cut together, in which order, and when the reverse has the same light', async ({ screen }) => {
  await opened(screen, 'set-up-4a', 'Cut together, shot and reverse');
  await screen.page.getByRole('button', { name: /^Stand at / }).first().tap();
  const hold = await screen.page.getByText(/Takes cut together for/).textContent();
  const minutes = Number(/for (\d+) min/.exec(hold)?.[1]);
  assert.ok(minutes > 5, hold);
  await screen.see(/set-up [AB], .* across|do not all fit/);
  await screen.see(/Both on this day|cannot both have this light/);
  await screen.type('Shadow longer by', '5');
  await screen.keys('Tab');
  await screen.page.waitForFunction((was) => !document.body.textContent.includes(was), hold);
  const stricter = await screen.page.getByText(/Takes cut together for/).textContent();
  assert.ok(Number(/for (\d+) min/.exec(stricter)?.[1]) < minutes, `${stricter} after ${hold}`);
});

journey('a moving subject: a bend, both ways, and its caution', async ({ screen }) => {
  await opened(screen, 'set-up-7a', 'Moving subject');
  await screen.tap('Add a leg');
  await screen.see(/Moving vehicle/);
  await screen.see(/^Leg 1 out, 2 min, lens 75° ENE/);
  await screen.type('Leg 1 heading', '255');
  await screen.keys('Tab');
  await screen.see(/^Leg 1 out, 2 min, lens 255° WSW/);
  await screen.tap('Add a leg');
  await screen.type('Leg 2 heading', '345');
  await screen.keys('Tab');
  await screen.see(/^Leg 2 back, 2 min, lens 165° SSE/);
  await screen.see(/^All legs out: (never|start)/);
  await screen.tap('Remove leg 2');
  await screen.unseen(/^All legs out/);
  await screen.see(/^Leg 1 back, 2 min, lens 75° ENE/);
});
