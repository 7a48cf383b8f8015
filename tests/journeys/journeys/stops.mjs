// Levels of the demo's loft: shown side by side, at another time others, and an answer taken makes the ratio wanted.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';

journey('levels of a set-up: another hour, a ratio wanted, an answer taken', async ({ screen }) => {
  await screen.at('2027-03-11T17:40:00Z');
  await screen.open('#demo');
  await screen.tap('Scenes');
  await screen.tap(/Mending the sail/);
  await screen.tap('Stops');
  await screen.see('Light levels');
  await screen.see(/key side over fill side, [\d.]+ : 1/);
  for (const side of ['Back', 'Key side', 'Fill side', 'Behind']) await screen.see(side);
  const before = await sides(screen);
  await screen.page.getByRole('slider', { name: 'Time' }).focus();
  for (let presses = 0; presses < 3; presses += 1) await screen.keys('PageUp');
  await screen.see(/Thu 11 Mar 2027 18:10/);
  assert.notDeepEqual(await sides(screen), before);
  await screen.page.getByRole('slider', { name: 'Ratio wanted' }).focus();
  await screen.keys('Home');
  for (let presses = 0; presses < 4; presses += 1) await screen.keys('ArrowRight');
  await screen.see(/^(Take|Give|This is)/);
  await screen.tap(/^Take: /);
  await screen.see(/as wanted/);
});

/** What the four sides say. */
async function sides(screen) {
  return screen.page.locator('.level').allInnerTexts();
}
