// The main job, end to end: a place, a window, a wish, the best slots, one saved; kept, sent, wiped, taken in again.
// Then the quick question, by the phone's sensors. All of it with touch, on a fresh profile, with no network.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';

const MARCH = '2027-03-01T12:00:00Z';

journey('from pasted coordinates to a saved slot, and back from an exported file', async ({ screen }) => {
  await screen.at(MARCH);
  await screen.open();
  const kept = await mainJob(screen);
  await screen.page.goto('about:blank');
  await screen.wipe();
  await screen.open();
  await screen.see('no project yet');
  await takeIn(screen, kept);
});

journey('the same with the network off and the server stopped', async ({ screen, server }) => {
  await screen.at(MARCH);
  await screen.open();
  await screen.keptOffline();
  await screen.reload();
  await server.stop();
  await screen.offline();
  await mainJob(screen);
});

journey('sun through this window: three taps by the sensors, a fourth saves it', async ({ screen }) => {
  await screen.at('2027-03-10T11:00:00Z');
  await screen.standAt(40.6405, -8.6538);
  await screen.open();
  await screen.point(225, -4);
  await screen.tap('Sun through this window');
  await screen.see(/± 8 m/);
  await screen.tap('Take the first corner');
  // Two seconds on, so that the first corner's readings are forgotten.
  await screen.at('2027-03-10T11:00:10Z');
  await screen.point(268, 35);
  await screen.see(/^26\d° W, 3\d/);
  await screen.tap('Take the opposite corner');
  await screen.see(/^Tomorrow \d\d:\d\d–\d\d:\d\d, ± (\d+ min|\d h \d\d)/);
  await screen.tap('Save this window');
  await screen.see('Marks in the open');
  await screen.see(/window/);
});

journey('nobody is asked to sight the sun', async ({ screen }) => {
  // The sun stands at 234° and 27° there and then (checked against the project's own reference tables).
  await screen.at('2027-03-10T16:00:00Z');
  await screen.standAt(40.6405, -8.6538);
  await screen.open();
  await screen.point(236, 26);
  await screen.tap('Sun through this window');
  await screen.see('The sun stands there.');
  assert.equal(await screen.control('Take the first corner').isDisabled(), true);
});

journey('typed numbers answer as well where the phone knows nothing', async ({ screen }) => {
  await screen.at('2027-03-10T11:00:00Z');
  await screen.refuse('geolocation');
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.page.evaluate(() => { location.hash = '#sight'; });
  await screen.type(/height above the eye/, '-4');
  await screen.keys('Tab');
  await screen.tap('Take the first corner');
  await screen.control('Bearing of the corner', 'slider').focus();
  await screen.keys('PageUp', 'PageUp', 'PageUp', 'PageUp');
  await screen.type(/height above the eye/, '35,5');
  await screen.keys('Tab');
  await screen.tap('Take the opposite corner');
  await screen.see(/± \d+ min|does not come through/);
});

/** Start → place → room with a west window → set-up → wish → slots → save → reload. Gives the exported file. */
async function mainJob(screen) {
  await screen.tap('Paste a place');
  await screen.type(/^Paste a place/, 'We meet at 40°38′25.8″N 8°39′13.68″W, second floor');
  await screen.tap('Read the pasted place');
  await screen.see('40.6405 N 8.6538 W');

  await screen.page.getByText('Add a room', { exact: true }).tap();
  await screen.control('Window wall faces', 'slider').focus();
  for (let step = 0; step < 7; step++) await screen.keys('PageUp');
  await screen.tap('Add this room');
  await screen.see('Wall 1, seen from inside');
  await screen.tap('+ tall window');
  await screen.see('1 in this room');

  await screen.tap('Scenes');
  await screen.tap('Add a scene');
  await screen.see('1 · Scene 1');
  await screen.choose('Where', /Mark 1/);
  await screen.tap('rim');
  await screen.control('Lens bearing', 'slider').focus();
  for (let step = 0; step < 25; step++) await screen.keys('PageUp');
  await screen.see(/works on \d+ days? a year/);
  const bracket = screen.control('light from', 'slider');
  const before = await bracket.getAttribute('aria-valuenow');
  await screen.dragBy('light from', 14, 10, 'slider');
  assert.notEqual(await bracket.getAttribute('aria-valuenow'), before, 'the bracket follows the finger');
  await screen.tap(/^Save: /);
  await screen.see('Saved');
  await screen.control(/^Saved: /).waitFor();
  await screen.saved();

  await screen.reload();
  await screen.control(/^Saved: /).waitFor();
  return exported(screen);
}

async function exported(screen) {
  await screen.page.evaluate(() => { location.hash = '#projects'; });
  const file = await screen.download(() => screen.tap('Export'));
  assert.equal(JSON.parse(file.text).format, 'slantlight-project');
  return file;
}

/** Opens the file on an empty phone, and finds the same bytes when it is exported again. */
async function takeIn(screen, file) {
  await screen.pick(() => screen.tap('Open a project file'), file.name, file.text);
  await screen.tap('Take it in');
  await screen.saved();
  assert.equal((await exported(screen)).text, file.text);
}
