// Days: the demo is planned, a set-up is pinned and moved, the rest is planned anew, and the plan goes out. Files are read
// by programs that are not ours.

import assert from 'node:assert/strict';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { check } from '@placemarkio/check-geojson';
import ICAL from 'ical.js';
import { journey } from '../kit/journey.mjs';
import { pages } from '../kit/pdf.mjs';
import { DESK, OUT } from '../kit/screen.mjs';

async function planned(screen) {
  await screen.at('2027-03-05T10:00:00Z');
  await screen.open('#demo');
  await screen.see('Mending');
  await screen.open('#days');
  await screen.tap('Suggest days by their light');
  await screen.control(/^Remove /).waitFor();
  await screen.tap('Plan the days');
  await screen.see(/No plan does|No plan holds|the best found/);
}

async function go(screen, fragment) {
  await screen.page.evaluate((to) => { location.hash = to; }, fragment);
}

const rows = (screen) => screen.page.locator('.day .run > li');

async function file(screen, name) {
  const [download] = await Promise.all([screen.page.waitForEvent('download'), screen.tap(name)]);
  return readFileSync(await download.path(), 'utf8');
}

journey('the demo is planned, pinned, moved by hand and planned anew', async ({ screen }) => {
  await planned(screen);
  await screen.see(/ready by \d\d:\d\d/);
  assert.ok((await rows(screen).count()) > 8);
  const first = screen.page.locator('.day .run button').first();
  const name = await first.textContent();
  await first.tap();
  await screen.tap(/Pin: planning leaves it there/);
  await screen.see('pinned');
  const line = rows(screen).filter({ hasText: name }).first();
  const before = await line.locator('time').textContent();
  await screen.tap('Plan the days');
  await screen.see(/No plan does|No plan holds|the best found/);
  assert.equal(await line.locator('time').textContent(), before);
  await line.locator('button').tap();
  await screen.type('Begins at', '03:00');
  await screen.page.getByLabel('Begins at').blur();
  await screen.tap('Put it there');
  await screen.page.keyboard.press('Escape');
  await screen.page.locator('.fault').first().waitFor();
});

journey('calendar, map and table of the plan are what other programs read', async ({ screen }) => {
  await planned(screen);
  const shown = await rows(screen).count();
  const ics = await file(screen, 'Calendar file, with alarms');
  assert.ok(ics.split('\r\n').every((line) => Buffer.byteLength(line) <= 75), 'folded (RFC 5545, 3.1)');
  const calendar = new ICAL.Component(ICAL.parse(ics));
  const events = calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
  assert.equal(events.length, shown);
  assert.equal(new Set(events.map((event) => event.uid)).size, shown);
  const clocks = await rows(screen).locator('time').allTextContents();
  const lisbon = new Intl.DateTimeFormat('en-GB', { timeZone: 'Europe/Lisbon', hour: '2-digit', minute: '2-digit' });
  const rounded = (event) => lisbon.format(new Date(Math.round(event.startDate.toUnixTime() / 60) * 60_000));
  assert.deepEqual(events.map(rounded), clocks);
  // Titles and notes with commas, semicolons and lines come back as they are shown.
  const shownTitles = await rows(screen).evaluateAll((lines) => lines.map((line) => line.querySelector('button, strong').textContent));
  assert.deepEqual(events.map((event) => event.summary), shownTitles);
  const subs = await rows(screen).evaluateAll((lines) => lines.map((line) => line.querySelector('p').textContent));
  assert.ok(subs.every((sub, n) => events[n].description.endsWith(sub)) && subs.some((sub) => sub.includes(',')));
  assert.ok(calendar.getAllSubcomponents('vevent').some((event) => event.getFirstSubcomponent('valarm')));
  const map = check(await file(screen, 'Map of places and bearings'));
  assert.ok(map.features.length >= 3);
  const loft = map.features.find((feature) => feature.properties.name === 'Sail loft');
  assert.deepEqual(loft.geometry.coordinates.slice(0, 2), [-8.6538, 40.6405]);
  const table = (await file(screen, 'Table')).trim().split('\r\n');
  assert.equal(table.length, shown + 1);
});

journey('the sheet prints as one page a day, on A4 and on Letter', async ({ screen }) => {
  await planned(screen);
  const headings = await screen.page.locator('.day h2').allTextContents();
  const titles = await screen.page.locator('.day').evaluateAll((days) => days.map((day) => [...day.querySelectorAll('.run button')].map((one) => one.textContent)));
  mkdirSync(OUT, { recursive: true });
  for (const [format, width, height] of [['A4', 595, 842], ['Letter', 612, 792]]) {
    const pdf = await screen.page.pdf({ format, preferCSSPageSize: false });
    writeFileSync(`${OUT}/days-${format}.pdf`, pdf);
    const printed = pages(pdf);
    assert.equal(printed.length, headings.length, format);
    printed.forEach((page, day) => {
      assert.ok(Math.abs(page.width - width) < 1 && Math.abs(page.height - height) < 1, `${page.width} × ${page.height}`);
      // Selected and copied, the text is that of the day, and of no other.
      const text = page.text.replace(/\s+/g, '');
      for (const words of ['Salt and thread', headings[day], ...titles[day]]) assert.ok(text.includes(words.replace(/\s+/g, '')), `${words} on page ${day + 1} of ${format}: ${page.text}`);
      assert.ok(!text.includes(headings[(day + 1) % headings.length].replace(/\s+/g, '')) || headings.length === 1);
      assert.ok(!text.includes('SendDay'), 'buttons stay off the paper');
    });
  }
  const page = await file(screen, 'Page file');
  assert.ok(page.startsWith('<!doctype html>') && !/<(script|link|img)/.test(page));
});

journey('a set-up is dragged to another time, its conflict is said at once, and undo takes it back', async ({ screen }) => {
  await planned(screen);
  const row = rows(screen).filter({ hasText: 'The ledger' }).first();
  const before = await row.locator('time').textContent();
  await row.locator('button').tap();
  await screen.see(/^Its light that day: \d\d:\d\d–\d\d:\d\d/);
  assert.equal(await screen.page.locator('dialog .fault').count(), 0);
  await screen.dragBy('Begin', 300, 0, 'slider');
  await screen.page.locator('dialog .fault', { hasText: /light|wrap|longer/ }).first().waitFor();
  await screen.page.keyboard.press('Escape');
  await screen.page.waitForFunction(([words, was]) => ![...document.querySelectorAll('.day .run > li')].some((line) => line.textContent.includes(words) && line.querySelector('time').textContent === was), ['The ledger', before]);
  await screen.page.locator('.days .fault').first().waitFor();
  await screen.tap(/^Undo/);
  await screen.page.waitForFunction(([words, was]) => [...document.querySelectorAll('.day .run > li')].some((line) => line.textContent.includes(words) && line.querySelector('time').textContent === was), ['The ledger', before]);
  assert.equal(await screen.page.locator('.days .fault').count(), 0, 'as the solver left it');
});

journey('two set-ups change places, one is taken out, and both come back', async ({ screen }) => {
  await planned(screen);
  const clock = (title) => rows(screen).filter({ hasText: title }).first().locator('time').textContent();
  const at = (title, time) => screen.page.waitForFunction(([words, is]) => [...document.querySelectorAll('.day .run > li')].some((line) => line.textContent.includes(words) && line.querySelector('time').textContent === is), [title, time]);
  const [ledger, rakes] = [await clock('The ledger'), await clock('The rakes')];
  const hold = (title) => rows(screen).filter({ hasText: title }).first().locator('button').tap();
  await hold('The ledger');
  await screen.choose(/^Swap places with/, /The rakes/);
  await at('The ledger', rakes);
  await at('The rakes', ledger);
  await screen.tap(/^Undo/);
  await at('The ledger', ledger);
  await hold('The ledger');
  await screen.tap('Take it out of the plan');
  await screen.see('On no day');
  await screen.page.locator('.unplaced', { hasText: 'The ledger' }).waitFor();
  await screen.tap(/^Undo/);
  await at('The ledger', ledger);
  await screen.page.locator('.unplaced', { hasText: 'The ledger' }).waitFor({ state: 'detached' });
});

journey('planning goes on in slices, and can be stopped', async ({ screen }) => {
  await screen.open('#demo');
  await screen.see('Mending');
  // More set-ups than are planned at once, all with light for hours.
  await go(screen, '#projects');
  const project = JSON.parse((await screen.download(() => screen.tap('Export'))).text);
  const scene = project.scenes.find((one) => one.number === '3');
  const copy = (n) => ({ ...scene.set_ups[0], id: `copy-${n}`, name: `A${n}` });
  scene.set_ups.push(...Array.from({ length: 29 }, (_, n) => copy(n)));
  await screen.pick(() => screen.tap('Open a project file'), 'thirty.json', JSON.stringify({ ...project, id: 'thirty' }));
  await screen.tap('Take it in');
  await screen.open('#days');
  await screen.tap('Suggest days by their light');
  await screen.control(/^Remove /).waitFor();
  await screen.slower(4);
  await screen.tap('Plan the days');
  const share = async () => Number((await screen.control(/^Stop planning/).textContent()).match(/\d+/)[0]);
  const first = await share();
  // The page answers meanwhile, and says how far it is.
  const fold = screen.page.locator('summary', { hasText: 'Rules you have agreed' });
  await fold.evaluate((summary) => summary.click());
  await screen.see('No call before');
  await screen.page.waitForFunction((was) => Number(document.querySelector('.solving progress').value) > was, first);
  await screen.page.locator('.solving button').evaluate((button) => button.click());
  await screen.control('Plan the days').waitFor();
  assert.equal(await rows(screen).count(), 0, 'nothing was planned');
});

journey('a pick-up in the same light again lands in a day', async ({ screen }) => {
  await planned(screen);
  const before = await screen.page.locator('.day .run button').count();
  await screen.open('#set-up/set-up-7a');
  await screen.control(/^Stand at /).tap();
  await screen.open('#year/set-up-7a');
  await screen.tap('Same light again');
  const plan = screen.control(/^Plan a pick-up: /);
  await plan.waitFor();
  await plan.tap();
  await screen.see(/Pick-up planned: it stands in Days on /);
  await screen.open('#days');
  await screen.page.locator('.day .run button', { hasText: 'Walking the dyke, A, pick-up' }).waitFor();
  assert.equal(await screen.page.locator('.day .run button').count(), before + 1);
  await screen.tap('Plan the days');
  await screen.see(/No plan does|No plan holds|the best found/);
  await screen.page.locator('.day .run button', { hasText: 'Walking the dyke, A, pick-up' }).waitFor();
});

journey('the light of a scene matches by the limits of the shot', async ({ screen }) => {
  await planned(screen);
  await screen.page.getByText('Scenes whose light must match').tap();
  assert.equal(await screen.value(/^4 · Mending the sail: light must match/), 'yes');
  await screen.open('#set-up/set-up-4a');
  await screen.page.getByText('Cut together, shot and reverse').tap();
  await screen.see('The plan of days keeps all set-ups of this scene within these limits.');
  // So little that twenty-five minutes of it are too long beside anything else.
  await screen.type(/^Light turned by/, '1');
  await screen.page.keyboard.press('Tab');
  await screen.saved();
  await screen.open('#days');
  // As planned before it is a conflict now, with the reason.
  await screen.see(/its light will not cut with the scene's others|Its light will not cut with the scene's others/);
  await screen.tap('Plan the days');
  await screen.see(/No plan holds|the best found/);
  await screen.page.locator('.unplaced', { hasText: 'Mending the sail' }).waitFor();
  assert.equal(await screen.page.locator('.day .fault', { hasText: 'cut with' }).count(), 0);
});

journey('one day is sent as a message', async ({ screen }) => {
  await screen.page.addInitScript(() => {
    navigator.share = async ({ text }) => void (window.shared = text);
  });
  await planned(screen);
  const [first, second] = await screen.page.locator('.day h2').allTextContents();
  await screen.tap(`Send ${first}`);
  await screen.page.waitForFunction(() => window.shared);
  const text = await screen.page.evaluate(() => window.shared);
  assert.ok(text.includes(first) && !text.includes(second) && /\d\d:\d\d Call/.test(text), text);
});

journey('on a desk two days stand side by side', async ({ fresh }) => {
  const desk = await fresh(DESK);
  await planned(desk);
  const boxes = await desk.page.locator('.day').evaluateAll((days) => days.slice(0, 2).map((day) => day.getBoundingClientRect().toJSON()));
  assert.ok(Math.abs(boxes[0].top - boxes[1].top) < 2 && boxes[1].left >= boxes[0].right, JSON.stringify(boxes));
});
