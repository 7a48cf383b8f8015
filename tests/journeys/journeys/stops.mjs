// Levels of the demo's loft: shown side by side, at another time others, and an answer taken makes the ratio wanted.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';

journey('levels of a set-up: another hour, a ratio wanted, an answer taken', async ({ screen }) => {
  await atTheLoft(screen);
  await screen.see(/key side over fill side, [\d.]+ : 1/);
  for (const side of ['Back', 'Key side', 'Fill side', 'Background']) await screen.see(side);
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

async function atTheLoft(screen) {
  await screen.at('2027-03-11T17:40:00Z');
  await screen.open('#demo');
  await screen.tap('Scenes');
  await screen.tap(/Mending the sail/);
  await screen.tap('Stops');
  await screen.see('Light levels');
}

/** Opens a fold by the words on it. */
async function unfold(screen, words) {
  await screen.page.locator('summary', { hasText: words }).first().click();
}

journey('a meter reading on the screen scales the model, in lux and in stops', async ({ screen }) => {
  await atTheLoft(screen);
  await screen.see(/model ± /);
  const before = await sides(screen);
  await unfold(screen, 'Enter a meter reading');
  await screen.type('Reading, in the open', '12000');
  await screen.keys('Tab');
  await screen.tap('Scale by this reading', 'button');
  await screen.see(/^metered: .* (over|under) the model$/);
  await screen.see(/12,000 lx facing the sun/);
  await screen.see(/metered ± /);
  assert.notDeepEqual(await sides(screen), before);
  await screen.tap(/^Remove .*12,000 lx facing the sun/, 'button');
  await screen.see(/model ± /);
  assert.deepEqual(await sides(screen), before);
  // The same by the camera: T8 at its ISO and shutter, the meter straight up.
  await screen.page.getByText('T-stop of the camera set', { exact: true }).click();
  await screen.page.getByText('straight up', { exact: true }).click();
  await screen.type('Reading, in the open', '8');
  await screen.keys('Tab');
  await screen.tap('Scale by this reading', 'button');
  await screen.see(/ lx straight up/);
  await screen.see(/metered ± /);
});

journey('the dusk asks for a stop less each time, until the slowest lens runs out', async ({ screen }) => {
  await atTheLoft(screen);
  await screen.see(/A stop every \d+ min from 1\d:\d\d/);
  await screen.see('A stop less each time:');
  const ramp = await screen.page.locator('.ramp li').allInnerTexts();
  assert.ok(ramp.length > 2 && ramp.every((step) => /^\d\d:\d\d T\d+(\.\d)?$/.test(step)), ramp.join());
  await screen.see(/Runs out of stop at 1\d:\d\d: T[\d.]+ is its slowest lens, without ND\./);
});

journey('a second camera is added, named, set and chosen for the set-up', async ({ screen }) => {
  await atTheLoft(screen);
  await screen.tap('Add a camera', 'button');
  await screen.see('Set Camera B');
  await unfold(screen, 'Set Camera B');
  await screen.page.locator('details', { hasText: 'Set Camera B' }).getByLabel('ISO', { exact: true }).fill('1600');
  await screen.keys('Tab');
  await screen.see('ISO 1,600');
  await screen.choose('Runs on', '16 mm');
  await screen.see(/A load runs \d+ min; ten minutes take \d+\./);
  const before = await sides(screen);
  await screen.page.getByRole('group', { name: 'This set-up is shot with' }).getByText('Camera B').click();
  await screen.page.waitForFunction((old) => document.querySelector('.level').innerText !== old, before[0]);
  await screen.tap('Remove this camera', 'button');
  await screen.unseen('Set Camera B');
});

journey('a lamp of the kit is measured, and a light that is there is kept with its hours', async ({ screen }) => {
  await atTheLoft(screen);
  const panels = screen.page.locator('.levels-kit details', { hasText: '1,400 lx at 1 m, 5,600 K, 60 W, invented' });
  const before = await panels.count();
  await screen.choose('Add a generic example (its numbers are invented)', 'Small panel, 0.6 × 0.3 m');
  // The demo has such a panel of its own: the new one is the one after it.
  const panel = panels.nth(before);
  await panel.locator('summary').click();
  await panel.getByLabel('The meter said').fill('900');
  await screen.keys('Tab');
  await screen.see(/900 lx at 1 m, 5,600 K, 60 W$/);
  const own = screen.page.locator('details', { hasText: '900 lx at 1 m' }).last();
  await own.getByText('hue', { exact: true }).click();
  await own.getByLabel(/^Hue/).fill('240');
  await screen.keys('Tab');
  await screen.see(/900 lx at 1 m, saturated, 60 W/);
  await screen.tap('Add a light that is there', 'button');
  await screen.see('20 lx, 2,700 K');
  const lamp = screen.page.locator('details', { hasText: '20 lx, 2,700 K' }).last();
  await lamp.locator('summary').click();
  await lamp.getByText('50 Hz', { exact: true }).click();
  await lamp.getByLabel(/^On from/).fill('17:00');
  await lamp.getByLabel('until').fill('23:30');
  await lamp.getByLabel('Colour temperature').fill('2200');
  await screen.keys('Tab');
  await screen.see('20 lx, 2,200 K, 50 Hz, on 17:00–23:30');
  await screen.tap('Remove this light', 'button');
  await screen.unseen('20 lx, 2,200 K, 50 Hz, on 17:00–23:30');
});

journey('a wetted floor mirrors what is in the picture, and is wetted again by the clock', async ({ screen }) => {
  await atTheLoft(screen);
  await screen.see(/walls, floor and ceiling add about [\d,.]+ lx on every side, an estimate/);
  await screen.see(/mirrors (nothing )?in the picture.*Loft window, left/);
  await screen.type('A wetted floor stays wet for (0: it is not wetted)', '20');
  await screen.keys('Tab');
  await screen.see(/Wet it now, then at 18:00, 18:20, 18:40\. Slippery/);
  await screen.see(/A shaft shows .*, ± 1½\./);
});
