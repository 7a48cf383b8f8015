// The phone as compass and sight: the bearing of a wall by its edge, a point of the skyline along it, and the sun kept off.

import assert from 'node:assert/strict';
import { eventually } from '../kit/eventually.mjs';
import { journey } from '../kit/journey.mjs';

const AFTERNOON = '2027-03-18T16:00:00Z';

/** Magnetic north lies within this of true north at the demo's places in 2027 (WMM2025 gives about a degree west). */
const DECLINATION = 2;

journey("a wall's bearing is taken with the phone's edge along it, and undone", async ({ screen }) => {
  await open(screen, 'room/loft');
  const faces = screen.control('Wall faces', 'slider');
  const degrees = async () => Number(await faces.getAttribute('aria-valuenow'));
  const before = await degrees();
  // The left edge along a wall that faces west-south-west lies to the north-north-west of its bottom.
  await screen.sense(before + 12 + 90, 0);
  await screen.tap('Take from compass');
  await screen.see(/its left long edge along the wall/);
  await screen.see(/steady to 0\.0°/);
  await screen.tap('Take it');
  await screen.unseen('Take it');
  await eventually(async () => assert.notEqual(await degrees(), before));
  const taken = await degrees();
  assert.ok(Math.abs(taken - before - 12) <= DECLINATION, `${before}° before, ${taken}° by the phone`);
  assert.ok(Number(await screen.value('Bearing good to ±')) >= 3, 'no compass is better than some degrees');
  await screen.saved();
  await screen.tap(/^Undo/);
  await screen.page.waitForFunction(
    (old) => Number(document.querySelector('.room-faces [role=slider]').getAttribute('aria-valuenow')) === old,
    before,
  );
});

journey('a point of the skyline is sighted along the phone, but never the sun', async ({ screen }) => {
  await open(screen, 'location/salt-pans');
  await screen.unseen(/^\d+ points?$/);
  await screen.sense(300, 12);
  await screen.tap('Sight a point along the phone');
  await screen.see(/Never sight the sun itself/);
  await screen.see(/^(29[89]|30[0-2])° WNW, 1[12]\.\d° high$/);
  await screen.tap('Take it');
  await screen.see('1 point');
  await screen.saved();
  // Now at the sun: it is refused, and says why.
  await screen.page.evaluate(() => { location.hash = '#now'; });
  const facts = await screen.page.locator('.facts dd').allTextContents();
  const [height, bearing] = facts.map((fact) => Number.parseFloat(fact));
  await open(screen, 'location/salt-pans');
  await screen.sense(bearing, height);
  await screen.tap('Sight a point along the phone');
  await screen.see(/The sun stands there\. Do not look along the phone/);
  assert.ok(await screen.control('Take it').isDisabled());
});

/** A page of the demo in the afternoon; the browser's sensor must be ours before the page is there. */
async function open(screen, page) {
  await screen.sense(0, 0);
  await screen.at(AFTERNOON);
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.page.evaluate((to) => { location.hash = `#${to}`; }, page);
}
