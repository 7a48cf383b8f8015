// Every field of lamps, lights, boards and frames, typed: what the four sides say then is held against the textbook.

import assert from 'node:assert/strict';
import { eventually } from '../kit/eventually.mjs';
import { journey } from '../kit/journey.mjs';
import { sun } from '../kit/sun.mjs';

const NIGHT = '2027-03-11T23:30:00Z';
const SLIP = [40.6216, -8.7415];

async function levelsOf(screen, setUp, at) {
  await screen.at(at);
  await screen.open('#demo');
  await screen.page.evaluate((there) => { location.hash = there; }, `#set-up/${setUp}`);
  await screen.see(/works on \d+ days? a year/);
  await screen.tap('Stops');
  await screen.see('Light levels');
}

/** What a side says: `of(screen, 'camera left')`. */
async function of(screen, words) {
  const rows = await screen.page.locator('.level').allInnerTexts();
  const row = rows.find((one) => one.includes(words)) ?? assert.fail(`${words} in ${rows}`);
  const [name, source, stop, lux] = row.split('\n');
  return { name, source, stop, lux: Number(lux.replace(/[^\d.]/g, '')) };
}

const near = (found, expected, share, what) =>
  assert.ok(Math.abs(found - expected) <= Math.abs(expected) * share, `${what}: ${found} is not ${expected}`);

/** A number in a list, typed. */
async function put(place, label, text) {
  await place.getByLabel(label, { exact: true }).fill(text);
  await place.getByLabel(label, { exact: true }).press('Tab');
}

/** Adds an example to the kit, opens it and brings it to the set-up; gives its fold and that of its standing here. */
async function brought(screen, example) {
  const all = screen.page.locator('.levels-kit details', { hasText: example });
  const before = await all.count();
  await screen.choose('Add a generic example (its numbers are invented)', example);
  await all.nth(before).waitFor();
  const piece = all.last();
  await piece.locator('summary').click();
  await piece.getByRole('button', { name: 'Bring it here' }).click();
  // What stands here comes before what is in the van.
  await screen.page.waitForFunction(([name, count]) =>
    [...document.querySelectorAll('.levels-kit details')].filter((one) => one.innerText.includes(name)).length > count, [example, before + 1]);
  const standing = all.first();
  await standing.locator('summary').click();
  return [all.last(), standing];
}

journey('candelas give lux by the square of the distance, and the stop that goes with them', async ({ screen }) => {
  await levelsOf(screen, 'set-up-8a', NIGHT);
  const [lamp, standing] = await brought(screen, 'Spot, tungsten');
  await lamp.getByText('candelas', { exact: true }).click();
  await put(lamp, 'Along its axis', '4000');
  await standing.getByText('right', { exact: true }).click();
  for (const [distance, candelas] of [[2, 4000], [4, 4000], [4, 10000]]) {
    await put(lamp, 'Along its axis', String(candelas));
    await put(standing, 'Distance', String(distance));
    const lux = candelas / distance ** 2;
    await eventually(async () => {
      const key = await of(screen, 'camera right');
      near(key.lux, lux, 0.03, 'lux');
      // Handbook F1: N² = E · t · S / 250, at 1/48 s and ISO 400; T-stops stand a third of a stop apart.
      near(Number(key.stop.slice(1)), Math.sqrt((lux / 48) * (400 / 250)), 0.13, key.stop);
    });
  }
  await screen.tap(/^Undo: /, 'button');
  await eventually(async () => near((await of(screen, 'camera right')).lux, 4000 / 16, 0.03, 'undone'));
});

journey('a lamp that is there lights the cheek that its bearing says', async ({ screen }) => {
  await levelsOf(screen, 'set-up-8a', NIGHT);
  await screen.tap('Add a light that is there', 'button');
  await screen.see('20 lx, 2,700 K');
  const lamp = screen.page.locator('.levels-place details', { hasText: '2,700 K' }).last();
  await lamp.locator('summary').click();
  await put(lamp, 'Light at the mark, the meter facing it', '1000');
  await lamp.getByText('one side', { exact: true }).click();
  // The lens looks to 20°, so the face looks to 200°; the cheeks look 45° to either side of that.
  const cos = (degrees) => Math.max(0, Math.cos((degrees * Math.PI) / 180));
  for (const bearing of [155, 170, 200, 231, 245]) {
    await put(lamp, 'It stands to', String(bearing));
    await eventually(async () => {
      for (const [side, faces] of [['camera right', 155], ['camera left', 245]]) {
        const lit = 1000 * cos(bearing - faces);
        const said = await of(screen, side);
        assert.ok(Math.abs(said.lux - lit) <= Math.max(1, lit * 0.05), `${side} by ${bearing}°: ${said.lux}, not ${lit}`);
      }
    });
    await screen.see(new RegExp(`from ${bearing}° `));
  }
  // Two to one and a half: a stop and a half, by the tangent of the angle.
  await put(lamp, 'It stands to', '180');
  await screen.see(/key side over fill side, 2\.[01] : 1/);
  await lamp.getByText('all around', { exact: true }).click();
  await eventually(async () => near((await of(screen, 'camera left')).lux, 1000, 0.03, 'all around'));
});

journey('Duv turns a white light green or magenta, and x and y say any colour', async ({ screen }) => {
  await levelsOf(screen, 'set-up-8a', NIGHT);
  const [lamp] = await brought(screen, 'Small panel, 0.6 × 0.3 m');
  const key = () => screen.page.locator('.level-colour', { hasText: 'Key side' }).innerText();
  const says = (pattern) => eventually(async () => assert.match(await key(), pattern));
  await says(/5,600 K/);
  await lamp.getByText('with Duv', { exact: true }).click();
  await put(lamp, 'Duv, positive is greenish', '0.012');
  // A greenish light is put right by magenta, and the other way round; its temperature stays.
  // Duv 0.006 is a quarter to a half correction, 7.5 to 15 units (handbook H6): twice that is 22.
  await says(/5,600 K.*magenta, CC 2[23]/s);
  const green = await key();
  await lamp.getByRole('button', { name: '+, tap to turn' }).click();
  await says(/5,600 K.*green, CC 2[23]/s);
  assert.notEqual(await key(), green);
  await put(lamp, 'Duv, positive is greenish', '0');
  await eventually(async () => assert.doesNotMatch(await key(), /magenta|green/));
  await lamp.getByText('x, y', { exact: true }).click();
  // Illuminant A of the CIE: x 0.44758, y 0.40745, 2856 K.
  await put(lamp, 'x', '0.44758');
  await put(lamp, 'y', '0.40745');
  await says(/2,900 K/);
  await eventually(async () => assert.doesNotMatch(await key(), /magenta|green/));
  // A saturated blue has none.
  await put(lamp, 'x', '0.15');
  await put(lamp, 'y', '0.06');
  await says(/x 0\.15, y 0\.06: no colour temperature/);
  await screen.see(/saturated, 60 W/);
  // As style sheets write it: blue is the most of it.
  const swatch = await screen.page.locator('.level-colour', { hasText: 'Key side' }).locator('.level-swatch').getAttribute('style');
  const [red, greens, blue] = /rgb\((\d+), (\d+), (\d+)\)/.exec(swatch)?.slice(1).map(Number)
    ?? /#(..)(..)(..)/.exec(swatch).slice(1).map((two) => parseInt(two, 16));
  assert.ok(blue > red && blue > greens, swatch);
});

journey('a board gives back by its size and its cloth', async ({ screen }) => {
  await levelsOf(screen, 'set-up-6a', '2027-03-11T17:40:00Z');
  const [board, standing] = await brought(screen, 'White board, 2.4 × 2.4 m');
  await standing.getByText('left', { exact: true }).click();
  const cloth = 'Gives back (white cloth 85, black 3)';
  const read = async (percent, width, distance) => {
    await put(board, cloth, String(percent));
    await put(board, 'Width', String(width));
    await put(standing, 'Distance', String(distance));
    await screen.see(new RegExp(`${width.toFixed(2)} × 2\\.40 m, gives back ${percent} %`));
    await new Promise((done) => setTimeout(done, 300));
    return (await of(screen, 'camera left')).lux;
  };
  // What it gives back goes with what it reflects; what it hides of the sky does not change with that.
  const [none, some, all] = [await read(0, 2.4, 2), await read(40, 2.4, 2), await read(80, 2.4, 2)];
  near((all - none) / (some - none), 2, 0.1, `${none}, ${some}, ${all}`);
  // A rectangle seen from the front, handbook C8: four quarters, each by its two sides over the distance.
  const part = (width, height, distance) => {
    const [x, y] = [width / 2 / distance, height / 2 / distance];
    const side = (a, b) => (a / Math.hypot(1, a)) * Math.atan(b / Math.hypot(1, a));
    return (2 / Math.PI) * (side(x, y) + side(y, x));
  };
  for (const [width, distance] of [[1.2, 2], [2.4, 4], [0.6, 1]]) {
    const given = (await read(80, width, distance)) - (await read(0, width, distance));
    near(given / (all - none), part(width, 2.4, distance) / part(2.4, 2.4, 2), 0.12, `${width} m wide at ${distance} m`);
  }
});

journey('a frame takes what its cloth takes of the sun, over what is seen of it', async ({ screen }) => {
  await levelsOf(screen, 'set-up-8a', '2027-06-11T12:30:00Z');
  const [frame, standing] = await brought(screen, 'Frame, 2.4 m, full diffusion');
  const read = async (loss, size, distance) => {
    await put(frame, 'Its cloth takes', String(loss));
    await put(frame, 'Width', String(size));
    await put(frame, 'Height', String(size));
    await put(standing, 'Distance', String(distance));
    await screen.see(new RegExp(`${size.toFixed(2)} × ${size.toFixed(2)} m, takes `));
    await new Promise((done) => setTimeout(done, 300));
    return (await of(screen, 'Key side')).lux;
  };
  // Six stops leave a sixty-fourth of the sun; nothing, all of what is seen of the cloth.
  const least = await read(6, 2.4, 1);
  const [whole, half, quarter] = [await read(0, 2.4, 1), await read(1, 2.4, 1), await read(2, 2.4, 1)];
  const bare = (whole - least) / (1 - 1 / 64);
  near((half - least) / bare, 1 / 2 - 1 / 64, 0.08, `${whole}, ${half}, ${least}`);
  near((quarter - least) / bare, 1 / 4 - 1 / 64, 0.12, `${whole}, ${quarter}, ${least}`);
  const part = (size, distance) => {
    const x = size / 2 / distance;
    return (4 / Math.PI) * (x / Math.hypot(1, x)) * Math.atan(x / Math.hypot(1, x));
  };
  const small = (await read(0, 1.2, 1)) - (await read(6, 1.2, 1));
  // Two figures are shown: a thousand lux either way of some seventeen, and of twice as many.
  near(small / (whole - least), part(1.2, 1) / part(2.4, 1), 0.1, 'a frame of half the width');
  assert.doesNotMatch((await of(screen, 'Key side')).source, /sun/);
});

journey('a wetted floor mirrors a low sun in the picture', async ({ screen }) => {
  const at = '2027-03-11T18:10:00Z';
  await screen.at(at);
  await screen.open('#demo');
  await screen.page.evaluate(() => { location.hash = '#set-up/set-up-6a'; });
  await screen.see(/works on \d+ days? a year/);
  // The lens is turned to the sun and up a little, and is 35 mm long.
  const light = sun(at, ...SLIP);
  await screen.page.locator('summary', { hasText: /Camera|Lens|More/ }).first().click();
  const lens = screen.control(/^Lens bearing/, 'slider');
  await lens.focus();
  for (let press = 0; press < 60; press++) {
    const now = Number(await lens.getAttribute('aria-valuenow'));
    if (Math.abs(now - light.bearing) < 3) break;
    await screen.keys(now < light.bearing ? 'ArrowRight' : 'ArrowLeft');
  }
  await screen.tap('Stops');
  const note = screen.page.locator('.levels-notes', { hasText: 'Wet floor' });
  await eventually(async () => assert.match(await note.innerText(), /mirrors in the picture the sun ([\d.]+) m before the lens, ([\d⅓⅔]+) stops? more than straight down/));
  const [, far, more] = /the sun ([\d.]+) m before the lens, ([\d⅓⅔]+) stops? more/.exec(await note.innerText());
  // Lens at 1.4 m. Fresnel for water, n 1.333, over what it throws back straight down.
  near(Number(far), 1.4 / Math.tan((light.height * Math.PI) / 180), 0.02, 'how far');
  const incidence = ((90 - light.height) * Math.PI) / 180;
  const inside = Math.asin(Math.sin(incidence) / 1.333);
  const square = (value) => value * value;
  const back = (square(Math.sin(incidence - inside) / Math.sin(incidence + inside)) + square(Math.tan(incidence - inside) / Math.tan(incidence + inside))) / 2;
  const stops = Math.log2(back / square(0.333 / 2.333));
  const said = Number(/\d+/.exec(more)?.[0] ?? 0) + (more.includes('⅓') ? 1 / 3 : more.includes('⅔') ? 2 / 3 : 0);
  assert.ok(Math.abs(said - stops) <= 0.18, `${more} is not ${stops}`);
  assert.doesNotMatch(await note.innerText(), /out of it the sun/);
});

journey('any one setting of a camera is found from the others, and clouds make ranges of the levels', async ({ screen }) => {
  await levelsOf(screen, 'set-up-8a', '2027-06-11T12:30:00Z');
  const camera = screen.page.locator('details', { hasText: 'Set Camera A' }).first();
  await camera.locator('summary').click();
  const set = (label, text) => put(camera, label, text);
  await set('ISO', '800');
  await set('T-stop set', '4');
  await set('ND, density', '1.2');
  const { lux } = await of(screen, 'Key side');
  const facts = async () => (await screen.page.locator('.levels-cameras .facts').first().innerText()).replace(/\s+/g, ' ');
  const find = async (what) => {
    await screen.page.getByRole('group', { name: 'Find' }).getByText(what, { exact: true }).click();
    await new Promise((done) => setTimeout(done, 300));
    return facts();
  };
  // Handbook F1, a flat disc of 250: N² = E · t · S / 250, with what the ND leaves of E. Two figures of the light are shown.
  const light = lux / 10 ** 1.2;
  const time = 180 / 360 / 24;
  const stopped = (pattern, words) => Number(pattern.exec(words)?.[1].replace(',', '') ?? assert.fail(words));
  const third = 2 ** (1 / 6) - 1 + 0.03;
  near(stopped(/T([\d.]+)/, await find('T-stop')), Math.sqrt((light * time * 800) / 250), third / 2 + 0.02, 'T-stop');
  near(stopped(/ISO ([\d,]+)/, await find('ISO')), (250 * 16) / light / time, third, 'ISO');
  near(stopped(/shutter ([\d.]+)°|([\d.]+)° ?shutter/, (await find('shutter')).replace(/([\d.]+)° shutter/, 'shutter $1°')), ((250 * 16) / light / 800) * 24 * 360, third, 'shutter');
  near(stopped(/([\d.,]+) frames/, (await find('frames')).replace(/frames\/s ([\d.,]+)/, '$1 frames')), (light * 800 * 0.5) / 250 / 16, third, 'frames');
  near(10 ** stopped(/ND ([\d.]+)/, await find('ND')), (lux * time * 800) / 250 / 16, 0.3, 'ND');
  // Under broken cloud nobody knows to a third of a stop.
  await screen.page.getByText('broken cloud', { exact: true }).click();
  await screen.page.waitForFunction(() => [...document.querySelectorAll('.level')].every((row) => /[\d,]+–[\d,]+ lx/.test(row.innerText) && /T[\d.]+–T[\d.]+/.test(row.innerText)));
  await screen.page.getByText('overcast', { exact: true }).click();
  await screen.see(/key side over fill side, 1(\.\d)? : 1/);
});
