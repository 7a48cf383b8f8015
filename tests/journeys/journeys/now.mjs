// The day of the shoot: the countdown, travel in time, sleep and clock changes, sensors, refusals, no network, and what
// happened.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';

// Sun and slots of the demo's loft, worked out by the app itself; the reference tables guard the numbers.
const AFTERNOON = '2027-03-18T16:00:00Z';
const LOFT = [40.6405, -8.6538];

journey('now counts to the slot, the sun is dragged to another hour, and back', async ({ screen }) => {
  await atTheLoft(screen, AFTERNOON);
  await screen.see(/^(to the slot, which then holds|of sun left|left of the slot)/);
  const before = await number(screen);
  const strip = await screen.page.locator('.now-strip').boundingBox();
  const middle = { x: strip.x + strip.width / 2, y: strip.y + strip.height / 2 };
  await screen.drag(middle, { x: middle.x + 60, y: middle.y });
  await screen.see('Back to now');
  await screen.see(/the time chosen/);
  assert.notEqual(await number(screen), before, 'the countdown follows the sun');
  await screen.tap('Back to now');
  await screen.unseen('Back to now');
  assert.equal(await number(screen), before);
  const line = screen.control('Time of day', 'slider');
  await line.focus();
  await screen.keys('PageUp', 'PageUp');
  await screen.see('Back to now');
});

journey('after a sleep or a clock change the countdown is right at a touch, and within five seconds without one', async ({ screen }) => {
  await atTheLoft(screen, AFTERNOON);
  const before = await number(screen);
  const changed = (old, timeout) =>
    screen.page.waitForFunction((old) => document.querySelector('.now-number').textContent !== old, old, { timeout });
  await screen.at('2027-03-18T16:40:00Z');
  await changed(before, 6000);
  await screen.see(/16:40 UTC/);
  const later = await number(screen);
  await screen.at('2027-03-18T12:00:00Z');
  await screen.page.keyboard.press('Shift');
  await changed(later, 500);
  await screen.see(/12:00 UTC/);
});

journey('with no project now is for where the phone is', async ({ screen }) => {
  await screen.at(AFTERNOON);
  await screen.standAt(48.1372, 11.5755);
  await screen.open('#now');
  await screen.see('The sun needs a place');
  await screen.tap('Where am I?');
  await screen.see('Where I am');
  await screen.see(/of sun left/);
  await screen.see(/, sunset\./);
});

journey('the nearest location of the project is found, and a far phone gets its own point', async ({ screen }) => {
  await screen.standAt(...LOFT);
  await atTheLoft(screen, AFTERNOON);
  await screen.tap('Where am I?');
  await screen.see('You are at Sail loft.');
  await screen.context.setGeolocation({ latitude: 48.1372, longitude: 11.5755, accuracy: 12 });
  await screen.tap('Where am I?');
  await screen.see(/No location of the project is near/);
  await screen.see('Where I am');
  await screen.tap('Back to the project');
  await screen.page.getByRole('heading', { name: 'Sail loft' }).waitFor();
});

journey('refused positions and missing sensors are said, with what to do', async ({ screen }) => {
  await screen.refuse('geolocation');
  await atTheLoft(screen, AFTERNOON);
  await screen.tap('Where am I?');
  await screen.see(/not allowed to ask where the phone is/);
  await screen.tap('Check with a shadow');
  await screen.see(/this device has none: type the numbers/);
});

journey('a compass that was refused is said where it is asked for, in either kind of engine', async ({ screen, fresh }) => {
  const asking = await fresh();
  await asking.context.addInitScript(() => {
    DeviceOrientationEvent.requestPermission = () => Promise.resolve('denied');
  });
  await screen.refuse('magnetometer');
  for (const one of [screen, asking]) {
    await atTheLoft(one, AFTERNOON);
    await one.tap('Check with a shadow');
    await one.see(/This page is not allowed to read the compass\. Allow motion sensors/);
    await one.page.evaluate(() => { location.hash = '#set-up/set-up-4a'; });
    await one.tap('Take from compass');
    await one.see(/or type the numbers/);
    await one.page.getByLabel(/Lens bearing/).first().waitFor();
  }
});

journey('a shadow sets the compass right, and a lens bearing taken then is', async ({ screen }) => {
  // The browser's sensor must be ours before the page is there.
  await screen.sense(0, 0);
  await atTheLoft(screen, AFTERNOON);
  const sun = Number.parseInt(await screen.page.locator('.facts dd').nth(1).textContent(), 10);
  // Along the shadow, as a compass that reads ten degrees too little and magnetic north have it.
  await screen.sense(sun + 180 - 10, 0);
  await screen.tap('Check with a shadow');
  await screen.see(/steady to 0\.0°/);
  await screen.tap('Take it');
  await screen.see(/The compass was off by −?(8|9|10|11|12)\.\d° here/);
  await screen.page.evaluate(() => { location.hash = '#set-up/set-up-4a'; });
  await screen.sense(200 - 10, 0);
  await screen.tap('Take from compass');
  await screen.see(/set right by a shadow/);
  const aimed = Number.parseInt(await screen.page.locator('.huge').last().textContent(), 10);
  assert.ok(Math.abs(aimed - 200) <= 1, `true bearing ${aimed}`);
});

journey('a set-up is marked as shot, with note and reading, and the same light is looked for', async ({ screen }) => {
  await atTheLoft(screen, AFTERNOON);
  await screen.tap(/^4 A is shot/);
  await screen.see(/4 A, shot/);
  await screen.type('Note', 'thin cloud');
  await screen.keys('Tab');
  await screen.type(/^Meter/, '3200');
  await screen.keys('Tab');
  await screen.saved();
  await screen.reload();
  await screen.see(/4 A, shot/);
  await screen.page.waitForFunction(() => [...document.querySelectorAll('input, textarea')].some((field) => field.value === 'thin cloud'));
  assert.match(await screen.value(/^Meter/), /^3,?200$/);
  await screen.tap('Same light again');
  await screen.tap('Same light again');
  await screen.see('As on Thu 18 Mar 2027 16:00');
});

journey('an alarm rings before a slot begins, though the phone slept over the minute', async ({ screen }) => {
  await atTheLoft(screen, AFTERNOON);
  await screen.page.evaluate(() => { window.buzzed = 0; navigator.vibrate = () => { window.buzzed += 1; return true; }; });
  const begins = await screen.page.locator('.hours li', { hasText: /4 A: (saved )?slot begins/ }).locator('time').textContent();
  await screen.tap('Ring before slots');
  const [hour, minute] = begins.split(':').map(Number);
  await screen.at(new Date(Date.UTC(2027, 2, 18, hour, minute - 2)).toISOString());
  await screen.see('The slot begins soon.');
  assert.ok(await screen.page.evaluate(() => window.buzzed) >= 2, 'once when it was allowed, once now');
});

journey('digits for two metres, the dim screen, and the screen kept awake', async ({ screen }) => {
  await atTheLoft(screen, AFTERNOON);
  await screen.see(/stays awake on this page|lets the screen fall asleep/);
  await screen.tap(/Show it big$/);
  const digits = await screen.page.locator('.now-big-number').boundingBox();
  // A phone of this width is 65 mm wide: 75 px are 12.5 mm, a height that reads at two metres with plain eyes.
  assert.ok(digits.height >= 75, `${digits.height} px`);
  assert.ok(digits.width <= 390);
  await screen.tap(/Back to the page$/);
  await screen.tap('Dim for dusk');
  const ground = await screen.page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  assert.match(ground, /^rgb\(2, 11, 22\)$/);
  await screen.tap('Brighter screen');
});

journey('now works with the network off and the server stopped', async ({ screen, server }) => {
  await screen.at(AFTERNOON);
  await screen.open('#demo');
  await screen.saved();
  await screen.keptOffline();
  await screen.reload();
  await server.stop();
  await screen.offline();
  await screen.page.evaluate(() => { location.hash = '#now'; });
  await screen.see('The day');
  await screen.see(/sunset/);
});

journey('cloud came over: three taps to a new plan that is sent and kept, and the sun comes back', async ({ screen }) => {
  await screen.context.addInitScript(() => {
    navigator.share = (data) => { window.shared = data.text; return Promise.resolve(); };
  });
  await atTheLoft(screen, '2027-03-18T13:00:00Z');
  await screen.tap('Cloud came over');
  await screen.see(/dropped: needs the sun\. Next: /);
  await screen.tap('Plan it so');
  await screen.see('since 13:00');
  await screen.tap('Send it');
  const text = await screen.page.evaluate(() => window.shared);
  assert.match(text, /^Thu 18 Mar 2027, 13:00: no sun\. New plan until 19:\d\d:\n/);
  assert.match(text, /\(dropped: needs the sun\. Next: \d+ \w+, \d+ \w+, \d+ \w+\)/);
  // What was told stays when the page is closed, on that day.
  await screen.reload();
  await screen.see('since 13:00');
  await screen.see(/dropped: needs the sun\. Next: /);
  await screen.at('2027-03-19T13:00:00Z');
  await screen.reload();
  await screen.see('The day');
  await screen.unseen('since 13:00');
  await screen.at('2027-03-18T13:05:00Z');
  await screen.reload();
  await screen.tap('The sun is back');
  await screen.unseen('since 13:00');
  await screen.reload();
  await screen.see('The day');
  await screen.unseen('since 13:00');
  await screen.tap('We are late');
  await screen.see(/as planned/);
});

/** The demo's loft, set-up 4 A, at an instant. */
async function atTheLoft(screen, instant) {
  await screen.at(instant);
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.page.evaluate(() => { location.hash = '#set-up/set-up-4a'; });
  await screen.see('Lens bearing');
  await screen.page.evaluate(() => { location.hash = '#now'; });
  await screen.see('The day');
}

async function number(screen) {
  return screen.page.locator('.now-number').textContent();
}
