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

journey('how long all set-ups of a scene cut together follows what stands at any of them', async ({ screen }) => {
  await opened(screen, 'set-up-4a', 'Cut together, shot and reverse');
  await screen.page.getByRole('button', { name: /^Stand at / }).first().tap();
  const all = () => screen.page.getByText(/^Takes of all 2 set-ups of this scene/).textContent();
  const own = () => screen.page.getByText(/Takes cut together for/).textContent();
  const [before, alone] = [await all(), await own()];
  assert.match(before, /each by its own lens and lamps, (cut together for \d+ min: \d\d:\d\d–\d\d:\d\d|never cut together: at \d\d:\d\d .+)\./);
  // A panel close to the other set-up's subject changes its light, and so what the scene holds; this one's stays.
  await screen.page.evaluate(() => { location.hash = '#set-up/set-up-4b'; });
  await screen.see(/works on \d+ days? a year/);
  await screen.tap('Stops');
  const panel = screen.page.locator('.levels-kit details', { hasText: 'Small panel, 0.6 × 0.3 m' }).first();
  await panel.locator('summary').click();
  await panel.getByRole('button', { name: 'Bring it here' }).click();
  const standing = screen.page.locator('.levels-kit details', { hasText: /Small panel, 0\.6 × 0\.3 m\s*left, 2\.0 m/ });
  await standing.locator('summary').click();
  await standing.getByLabel('Distance', { exact: true }).fill('0.4');
  await standing.getByLabel('Distance', { exact: true }).press('Tab');
  await screen.saved();
  await screen.page.evaluate(() => { location.hash = '#set-up/set-up-4a'; });
  await screen.page.getByText('Cut together, shot and reverse', { exact: true }).tap();
  await screen.page.waitForFunction((was) => /Takes of all 2/.test(document.body.textContent) && !document.body.textContent.includes(was), before);
  assert.equal(await own(), alone);
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

journey('frame, flag and mirror are kept with the set-up, and an undo takes them back', async ({ screen }) => {
  await opened(screen, 'set-up-4a', 'Frame, flag, mirror');
  await screen.page.getByRole('button', { name: /^Stand at / }).first().tap();
  await screen.see(/^Frame: .* from the mark towards/);
  await screen.type('Frame wide', '0.4');
  await screen.keys('Tab');
  await screen.see(/^Frame: .*(Covers .*; the whole time needs|too small even for a minute)/);
  await screen.see(/Its beam meets a wall/);
  // Where the sun itself stands half-way through.
  await screen.type('From mark to mirror', '273');
  await screen.keys('Tab');
  await screen.type(/^Mirror over the face/, '1.1');
  await screen.keys('Tab');
  await screen.see(/^Its beam comes through Loft window/);
  await screen.tap(/^Undo: change a set-up/);
  await screen.page.waitForFunction(() => [...document.querySelectorAll('input')].every((field) => field.value !== '1.10 m'));
  assert.equal(await screen.value(/^Mirror over the face/), '0.00 m');
  await screen.saved();
  await screen.reload();
  await screen.page.getByText('Frame, flag, mirror', { exact: true }).tap();
  assert.equal(await screen.value('Frame wide'), '0.40 m');
  assert.equal(await screen.value('From mark to mirror'), '273');
});

journey('a still is looked at, a ball is turned like it, and its light becomes the wish', async ({ screen }) => {
  await opened(screen, 'set-up-4a', 'Match a still');
  // The smallest picture there is: one black point.
  const point = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR4nGNgYGD4DwABBAEAX+XDSwAAAABJRU5ErkJggg==';
  const [chooser] = await Promise.all([screen.page.waitForEvent('filechooser'), screen.tap('Choose a picture')]);
  await chooser.setFiles({ name: 'still.png', mimeType: 'image/png', buffer: Buffer.from(point, 'base64') });
  const still = screen.page.getByAltText('The still to match');
  await still.waitFor();
  assert.ok(await still.evaluate((image) => image.decode().then(() => image.naturalWidth === 1)), 'the picture is shown');
  await screen.control(/^Light round the face/, 'slider').focus();
  await screen.keys('PageDown');
  await screen.control(/^Light above the horizon/, 'slider').focus();
  await screen.keys('PageUp');
  const said = await screen.page.locator('.still + p').textContent();
  await screen.tap('Make it the wish');
  await screen.see(/^It is the wish now/);
  await screen.see(/works on \d+ days? a year/);
  await screen.saved();
  await screen.reload();
  await screen.page.getByText('Match a still', { exact: true }).tap();
  assert.equal(await screen.page.locator('.still + p').textContent(), said, 'the ball stands where the wish is');
  assert.equal(await still.count(), 0, 'the picture was not kept');
});

journey('somebody on the phone tells where the patch lies, and the room is turned by it', async ({ screen }) => {
  await screen.at(MARCH);
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.page.evaluate(() => { location.hash = '#room/loft'; });
  await screen.page.getByText('From a call or a picture', { exact: true }).tap();
  await screen.see(/^Type how far inside/);
  await screen.type('Patch corner from the wall', '4');
  await screen.keys('Tab');
  await screen.type(/^Right of its window corner/, '0.5');
  await screen.keys('Tab');
  await screen.see(/^The wall faces \d+° [A-Z]+, ± /);
  await screen.type(/^Window corner over the floor/, '9');
  await screen.keys('Tab');
  await screen.see(/higher than it stood: ask again/);
  await screen.type(/^Window corner over the floor/, '0');
  await screen.keys('Tab');
  const told = await screen.page.getByText(/^The wall faces/).textContent();
  const bearing = Number(/faces (\d+)°/.exec(told)?.[1]);
  await screen.tap('Turn the room so');
  await screen.see(/^The room stands so now/);
  await screen.saved();
  await screen.reload();
  const faces = await screen.control(/^Wall faces/, 'slider').getAttribute('aria-valuenow');
  assert.ok(Math.abs(Number(faces) - bearing) <= 1, `${told}, and the room faces ${faces}°`);
});

journey('a ratio is wished, and the slots keep to it', async ({ screen }) => {
  await opened(screen, 'set-up-4a', 'Levels wished');
  const wish = async (label, text) => {
    const before = (await slots(screen)).join();
    await screen.type(label, text);
    await screen.keys('Tab');
    await screen.page.waitForFunction((was) => [...document.querySelectorAll('.slot-clock')].map((each) => each.textContent).join() !== was, before);
  };
  const stand = async () => {
    await screen.page.getByRole('button', { name: /^Stand at / }).first().tap();
    await screen.tap('Stops');
    await screen.see('Light levels');
  };
  // What was wished is so at the slot, by the page of levels.
  await wish('Ratio from', '1.7');
  await stand();
  const said = await screen.page.getByText(/key side over fill side, [\d.]+ : 1/).textContent();
  assert.ok(Number(/([\d.]+) : 1/.exec(said)[1]) >= 1.6, said);
});
