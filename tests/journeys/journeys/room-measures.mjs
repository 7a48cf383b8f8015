// Measures of a room: dragged in the plan and typed, in feet and inches, and which way its wall faces by what the sun does;
// what the app says is held against plain trigonometry.

import assert from 'node:assert/strict';
import { eventually } from '../kit/eventually.mjs';
import { journey } from '../kit/journey.mjs';
import { sun } from '../kit/sun.mjs';

const AFTERNOON = '2027-03-11T16:40:00Z';
const LOFT = [40.6405, -8.6538];

async function inTheLoft(screen, at = AFTERNOON) {
  await screen.at(at);
  await screen.open('#demo');
  await screen.page.evaluate(() => { location.hash = '#room/loft'; });
  await screen.see(/^Sun on the mark \d\d:\d\d–\d\d:\d\d/);
}

/** Opens a fold by the words on it. */
async function unfold(screen, words) {
  await screen.page.locator('summary', { hasText: words }).first().click();
}

/** Types into a field and leaves it. */
async function put(screen, label, text) {
  await screen.type(label, text);
  await screen.keys('Tab');
}

const tan = (degrees) => Math.tan((degrees * Math.PI) / 180);
const cos = (degrees) => Math.cos((degrees * Math.PI) / 180);

/** What the page says that wall 1 faces by the sun, and how far that may be off. */
async function bySun(screen) {
  const said = await screen.page.getByText(/^By the sun wall \d faces/).textContent();
  const [, faces, good] = /faces ([\d.]+)° \w+ ± ([\d.]+)°/.exec(said);
  return { faces: Number(faces), good: Number(good), said };
}

const near = (found, expected, tolerance, what) =>
  assert.ok(Math.abs(found - expected) <= tolerance, `${what}: ${found} is not ${expected}`);

journey('a graze gives the bearing of the wall: a quarter turn from the sun', async ({ screen }) => {
  await inTheLoft(screen);
  await unfold(screen, 'Bearing from the sun');
  const [now, later] = [AFTERNOON, '2027-03-11T16:41:00Z'].map((at) => sun(at, ...LOFT));
  // Its disc is 0.267° in radius, wider over the horizon; the watch is good to two minutes, then to none.
  const disc = 959.63 / 3600 / cos(now.height);
  const begins = await bySun(screen);
  near(begins.faces, now.bearing + 90, 0.1, begins.said);
  near(begins.good, Math.hypot(2 * (later.bearing - now.bearing), disc), 0.06, begins.said);
  await put(screen, 'Seen to ±', '0');
  near((await bySun(screen)).good, disc, 0.06, 'the disc alone');
  await screen.page.getByText('ceases', { exact: true }).first().click();
  near((await bySun(screen)).faces, now.bearing - 90, 0.1, 'where the sun leaves');
  // The left one of its neighbours, a quarter turn on clockwise: wall 1 follows from it.
  await put(screen, 'Wall', '4');
  const fourth = await bySun(screen);
  near(fourth.faces, now.bearing - 90, 0.1, fourth.said);
  await screen.tap('Take this bearing', 'button');
  await screen.see(/the room says the same/);
  const faces = Number(await screen.control(/^Wall faces/, 'slider').getAttribute('aria-valuenow'));
  near(Math.abs(((faces - (now.bearing - 90) + 540) % 360) - 180), 90, 1, 'wall 1 stands across wall 4');
  await screen.tap(/^Undo: /, 'button');
  const back = async () => Number(await screen.control(/^Wall faces/, 'slider').getAttribute('aria-valuenow'));
  for (let wait = 0; (await back()) !== 248 && wait < 40; wait++) await screen.page.waitForTimeout(50);
  assert.equal(await back(), 248, 'undone');
});

journey('the corner of a patch, by two tapes, gives the bearing of the wall', async ({ screen }) => {
  await inTheLoft(screen);
  await unfold(screen, 'Bearing from the sun');
  await screen.page.getByText('patch', { exact: true }).first().click();
  const { bearing, height } = sun(AFTERNOON, ...LOFT);
  // The demo's left window: from 4.6 to 5.8 m along the wall, from 0.9 to 2.6 m high, in a wall 0.35 m thick.
  const [right, left, sill, head, thick] = [4.6, 5.8, 0.9, 2.6, 0.35];
  // If the wall faced this way: a ray through a corner of the outer frame (the head) or the inner one (the sill) goes on into
  // the room, and aside to the left as seen from inside where the sun stands to the right of the wall's way.
  for (const wall of [251, 240]) {
    const off = bearing - wall;
    const slope = tan(height) / cos(off);
    const aside = (depth) => depth * tan(off);
    // The side edge that casts is the outer one where the light comes from that side.
    const edge = (corner, into) => corner + aside(into + (aside(1) < 0 === (corner === left) ? thick : 0));
    for (const [name, corner, into] of [
      ['upper left', left, head / slope - thick],
      ['lower right', right, sill / slope],
    ]) {
      await screen.page.getByText(name, { exact: true }).first().click();
      await put(screen, 'Along the wall', edge(corner, into).toFixed(2));
      await put(screen, 'From the wall into the room', into.toFixed(2));
      await screen.page.waitForFunction(
        (expected) => Math.abs(Number(/By the sun wall 1 faces ([\d.]+)°/.exec(document.body.innerText)?.[1]) - expected) < 1,
        wall,
      );
      const found = await bySun(screen);
      // Half a centimetre of rounding, over the way of the light.
      near(found.faces, wall, 0.1 + (0.005 / into) * (180 / Math.PI) * 1.5, `${name}: ${found.said}`);
      assert.ok(!found.said.includes('you measured'), found.said);
    }
  }
  // Another corner than that of the tapes: the length does not fit, and the page doubts it.
  await screen.page.getByText('upper right', { exact: true }).first().click();
  await screen.see(/But the light should lie .* and you measured .*: is it the right corner/);
});

journey('a mark and a window are dragged in the plan, and stand where the same is typed', async ({ screen }) => {
  await inTheLoft(screen);
  await screen.tap('From above', 'button');
  const handle = (name) => screen.page.getByRole('button', { name, exact: false }).first();
  const middle = async (name) => {
    const box = await handle(name).boundingBox();
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };
  const places = (words) => [...words.matchAll(/([\d.]+) m/g)].map((one) => Number(one[1]));
  // Two marks and how far they are apart give the scale of the plan.
  const [bench, desk] = ['by the bench: drag', 'ledger desk: drag'];
  const [b, d] = [await middle(bench), await middle(desk)];
  const scale = Math.hypot(b.x - d.x, b.y - d.y) / Math.hypot(3.6 - 1.1, 2.6 - 1.6);
  const summary = (name) => screen.page.locator('summary', { hasText: name });
  await handle(bench).scrollIntoViewIfNeeded();
  const before = await middle(bench);
  const apart = async (one, other) => {
    const [a, b] = [await middle(one), await middle(other)];
    return { x: a.x - b.x, y: a.y - b.y };
  };
  await screen.drag(before, { x: before.x + 30, y: before.y - 12 });
  const [dragged, held] = [await middle(bench), await apart(bench, desk)];
  near(dragged.x - before.x, 30, 2, 'right'); near(dragged.y - before.y, -12, 2, 'up');
  const words = await summary('by the bench').last().innerText();
  const [x, y] = places(words);
  near(Math.hypot(x - 3.6, y - 2.6), Math.hypot(30, 12) / scale, 0.05, words);
  await screen.tap(/^Undo: /, 'button');
  await screen.page.waitForFunction(([text]) => document.body.innerText.includes(text), ['3.60 m along wall 1 · 2.60 m into the room']);
  await summary('by the bench').last().click();
  await put(screen, 'Along wall 1', x.toFixed(2));
  await put(screen, 'Into the room', y.toFixed(2));
  await eventually(async () => {
    const typed = await apart(bench, desk);
    near(typed.x, held.x, 1, 'typed, across'); near(typed.y, held.y, 1, 'typed, up');
  });

  // A window slides along its wall, and nowhere else.
  const window = 'Loft window, left: drag';
  const other = 'Loft window, right: drag';
  await handle(window).scrollIntoViewIfNeeded();
  const [from, wall] = [await middle(window), await apart(window, other)];
  const away = { x: wall.x * 0.2, y: wall.y * 0.2 };
  await screen.drag(from, { x: from.x + away.x, y: from.y + away.y });
  await unfold(screen, 'Loft window, left');
  const offset = 'From the left, seen outside';
  await screen.page.waitForFunction((label) => [...document.querySelectorAll('label')].some((one) =>
    one.textContent === label && document.getElementById(one.htmlFor).value !== '4.60 m'), offset);
  const slid = Number(/[\d.]+/.exec(await screen.value(offset))[0]);
  near(slid, 4.6 + (4.6 - 1.8) * 0.2, 0.06, 'the window');
  const there = await apart(window, other);
  await screen.tap(/^Undo: /, 'button');
  await screen.page.waitForFunction((label) => [...document.querySelectorAll('label')].some((one) =>
    one.textContent === label && document.getElementById(one.htmlFor).value === '4.60 m'), offset);
  await put(screen, offset, slid.toFixed(2));
  await eventually(async () => {
    const again = await apart(window, other);
    near(again.x, there.x, 1, 'typed, across'); near(again.y, there.y, 1, 'typed, up');
  });
  const again = await apart(window, other);
  near(Math.hypot(again.x, again.y) / scale, slid - 1.8, 0.05, 'as far from the other as its offset says');
});

journey('lengths are typed in feet and inches, shown so, and taken back', async ({ screen }) => {
  await screen.at(AFTERNOON);
  await screen.open('#demo');
  await screen.page.evaluate(() => { location.hash = '#about'; });
  await screen.page.getByText('feet, inches', { exact: true }).click();
  await screen.page.evaluate(() => { location.hash = '#room/loft'; });
  await screen.see(/room 26′ 3″ × 19′ 8″ × 11′ 2″/);
  await screen.see('3′ 11″ × 5′ 7″ · sill 2′ 11″ · reveal 1′ 2″');
  await screen.see(/\d in\/min drift|in\/min drift/);
  await unfold(screen, 'Loft window, left');
  assert.equal(await screen.value('Width'), '3′ 11″');
  await put(screen, 'Width', `5' 6"`);
  await screen.see('5′ 6″ × 5′ 7″ · sill 2′ 11″ · reveal 1′ 2″');
  assert.equal(await screen.value('Width'), '5′ 6″');
  for (const [typed, shown] of [['5 ft 7 in', '5′ 7″'], ['66"', '5′ 6″'], ['5.5', '5′ 6″'], ['1.5 m', '4′ 11″'], [`5' 6.6"`, '5′ 7″'], ['5′ 6″', '5′ 6″']]) {
    await put(screen, 'Width', typed);
    await screen.page.waitForFunction((words) => document.body.innerText.includes(`${words} × 5′ 7″ · sill`), shown);
    assert.equal(await screen.value('Width'), shown, typed);
  }
  await put(screen, 'Width', 'five');
  await screen.see(/“five” is not one length\. Type it like 5′ 6″ or 5\.5\./);
  await put(screen, 'Width', `5' 6"`);
  await screen.page.evaluate(() => { location.hash = '#about'; });
  await screen.page.getByText('metres', { exact: true }).click();
  await screen.page.evaluate(() => { location.hash = '#room/loft'; });
  // 5.5 · 0.3048 m.
  await screen.see('1.68 × 1.70 m · sill 0.90 m · reveal 0.35 m');
  for (let step = 0; step < 9; step++) {
    if (await screen.page.getByText('1.20 × 1.70 m · sill 0.90 m · reveal 0.35 m').count() === 2) break;
    await screen.tap(/^Undo: /, 'button');
    await screen.page.waitForTimeout(60);
  }
  assert.equal(await screen.page.getByText('1.20 × 1.70 m · sill 0.90 m · reveal 0.35 m').count(), 2, 'all is taken back');
});

journey('the shadow climbs a face at the speed of a tape beside it', async ({ screen }) => {
  const [now, later] = ['2027-03-11T18:20:00Z', '2027-03-11T18:21:00Z'];
  await inTheLoft(screen, now);
  await screen.see(/The shadow of the (sill|head) (climbs|sinks) [\d.]+ cm\/min at the mark, now at [\d.]+ m; the face is at 1\.25 m\./);
  const said = await screen.page.getByText(/The shadow of the/).innerText();
  const [, edge, way, speed, height] = /shadow of the (sill|head) (climbs|sinks) ([\d.]+) cm\/min at the mark, now at ([\d.]+) m/.exec(said);
  // The ray through the edge's middle, on an upright at the mark: how high it is, and where a minute later. The bench stands
  // 2.6 m from the wall that faces 248°; the head's shadow is cast by its outer edge, 0.35 m farther.
  const [high, depth] = edge === 'sill' ? [0.9, 2.6] : [2.6, 2.6 + 0.35];
  const at = (instant) => {
    const light = sun(instant, ...LOFT);
    return high - (depth * tan(light.height)) / cos(light.bearing - 248);
  };
  const [first, second] = [at(now), at(later)];
  near(Number(height), first, 0.011, said);
  near(Number(speed), Math.abs(second - first) * 100, 0.06, said);
  assert.equal(way, second > first ? 'climbs' : 'sinks', said);
});
