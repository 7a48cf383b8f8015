// The questions that no almanac answers: a lens that is free, a span that is fixed, a date under a pixel wide, trees in leaf.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';

journey('a free lens: slots say where it looks, and standing at one turns it there', async ({ screen }) => {
  await demo(screen, '#set-up/set-up-1a');
  await screen.page.getByText('free in a range', { exact: true }).tap();
  await screen.see(/, lens \d+°–\d+°$/);
  const row = screen.page.locator('.slots .slot').first();
  const lens = Number((await row.locator('.row-sub').first().textContent()).match(/^lens (\d+)° /)[1]);
  // Not where a note at the foot of the screen would take the tap.
  await row.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  await row.locator('.slot-text').tap();
  await screen.page.waitForFunction((lens) => [...document.querySelectorAll('[role=slider]')]
    .some((slider) => Number(slider.getAttribute('aria-valuenow')) === lens), lens);
  await screen.tap(/^Save: /);
  await screen.control(/^Saved: /).waitFor();
  await screen.saved();
  await screen.reload();
  await screen.see(/, lens \d+°–\d+°$/);
  await screen.control(/^Saved: /).waitFor();
  await screen.page.getByText('on any good background', { exact: true }).tap();
  await screen.see(/any good background$/);
});

journey('only here from–to: where the camera goes, in four taps from the location', async ({ screen }) => {
  await demo(screen, '#location/salt-pans');
  // One tap for the set-up; then date, from and to.
  await screen.tap(/^1 · The net mender/, 'link');
  await screen.type('Date', '2027-03-05');
  await screen.type('From', '16:00');
  await screen.type('To', '18:00');
  await screen.see(/Camera .* from the mark, towards \d+° [NESW]+/);
  await screen.see(/holds /);
  await screen.control(/^camera to /, 'img').waitFor();
  await screen.type('From', '02:00');
  await screen.type('To', '03:00');
  await screen.see('No bearing of the lens gives the wish over this span.');
  await screen.see('the nearest in time');
});

journey('a date of the year by month, week, finger and keys', async ({ screen }) => {
  await demo(screen, '#year/set-up-4a');
  await screen.tap(/^Mar \d+: days on which/);
  await screen.see(/Mar 2027 \d\d:\d\d, wish met/);
  const paper = screen.page.locator('.year-paper');
  assert.match(await paper.getAttribute('aria-label'), /^wish met on \d+ of 365 days$/);
  const before = await paper.getAttribute('aria-valuetext');
  await paper.focus();
  await screen.keys('ArrowRight');
  await screen.page.waitForFunction((before) => document.querySelector('.year-paper').getAttribute('aria-valuetext') !== before, before);
  const week = screen.page.getByRole('group', { name: 'Week' }).getByRole('button', { name: /wish met from/ }).first();
  await week.tap();
  assert.equal(await week.getAttribute('aria-pressed'), 'true');
  await screen.see(/\d\d:\d\d, wish met/);
  const box = await paper.boundingBox();
  await paper.tap({ position: { x: box.width * 0.6, y: box.height * 0.4 } });
  await screen.see(/(Aug|Sep|Oct) 2027 \d\d:\d\d, wish/);
});

journey('a tree hides the sun while it has leaves', async ({ screen }) => {
  await demo(screen, '#location/salt-pans');
  await screen.tap('+ tree');
  await screen.page.locator('summary', { hasText: 'Tree' }).tap();
  await screen.type(/^In leaf/, 'whenever');
  await screen.keys('Tab');
  await screen.see(/“whenever” is not two days/);
  await screen.type(/^In leaf/, '15 April to 1 Nov');
  await screen.keys('Tab');
  await screen.see(/in leaf 15 Apr–1 Nov/);
  await screen.saved();
  await screen.reload();
  await screen.see(/in leaf 15 Apr–1 Nov/);
});

async function demo(screen, fragment) {
  await screen.at('2027-03-01T12:00:00Z');
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.page.evaluate((there) => { location.hash = there; }, fragment);
}

journey('heights with a name, and the same light again for a shot that is typed', async ({ screen }) => {
  await screen.at('2027-03-11T17:28:00Z');
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.page.evaluate(() => { location.hash = '#set-up/set-up-4a'; });
  await screen.see(/works on \d+ days? a year/);
  await screen.page.getByText('Height of the sun', { exact: true }).tap();
  await screen.tap('low sun');
  await screen.page.waitForFunction(() => document.querySelector('[aria-label="Heights with a name"] [aria-pressed="true"]')?.textContent === 'low sun');
  await screen.see(/^0–10°$/);
  await screen.tap(/^Undo: change a set-up/);
  await screen.see(/^4–16°$/);
  await screen.page.evaluate(() => { location.hash = '#year/set-up-4a'; });
  await screen.tap('Same light again');
  await screen.see(/^As on Thu 11 Mar 2027 17:28/);
  await screen.type('We shot on', '2026-09-12');
  await screen.type('at', '19:10');
  await screen.see(/^As on Sat 12 Sep 2026 19:10/);
  await screen.see(/^(Tue|Wed|Thu|Fri|Sat|Sun|Mon) \d+ (Mar|Apr|Sep) 2027/);
});
