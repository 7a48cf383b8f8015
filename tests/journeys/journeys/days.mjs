// Days: the demo is planned, a set-up is pinned and moved, the rest is planned anew, and the plan goes out. Files are read
// by programs that are not ours.

import assert from 'node:assert/strict';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { check } from '@placemarkio/check-geojson';
import ICAL from 'ical.js';
import { journey } from '../kit/journey.mjs';
import { OUT } from '../kit/screen.mjs';

async function planned(screen) {
  await screen.open('#demo');
  await screen.see('Mending');
  await screen.open('#days');
  await screen.tap('Suggest days by their light');
  await screen.control(/^Remove /).waitFor();
  await screen.tap('Plan the days');
  await screen.see(/No plan does|the best found/);
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
  await screen.see(/No plan does|the best found/);
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
  const calendar = new ICAL.Component(ICAL.parse(await file(screen, 'Calendar file, with alarms')));
  const events = calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
  assert.equal(events.length, shown);
  assert.equal(new Set(events.map((event) => event.uid)).size, shown);
  const clocks = await rows(screen).locator('time').allTextContents();
  const lisbon = new Intl.DateTimeFormat('en-GB', { timeZone: 'Europe/Lisbon', hour: '2-digit', minute: '2-digit' });
  const rounded = (event) => lisbon.format(new Date(Math.round(event.startDate.toUnixTime() / 60) * 60_000));
  assert.deepEqual(events.map(rounded), clocks);
  assert.ok(calendar.getAllSubcomponents('vevent').some((event) => event.getFirstSubcomponent('valarm')));
  const map = check(await file(screen, 'Map of places and bearings'));
  assert.ok(map.features.length >= 3);
  const table = (await file(screen, 'Table')).trim().split('\r\n');
  assert.equal(table.length, shown + 1);
});

journey('the sheet prints as one page a day, on A4 and on Letter', async ({ screen }) => {
  await planned(screen);
  const days = await screen.page.locator('.day').count();
  mkdirSync(OUT, { recursive: true });
  for (const format of ['A4', 'Letter']) {
    const pdf = await screen.page.pdf({ format, preferCSSPageSize: false });
    writeFileSync(`${OUT}/days-${format}.pdf`, pdf);
    const text = pdf.toString('latin1');
    assert.equal((text.match(/\/Type\s*\/Page\b/g) ?? []).length, days, format);
    assert.ok(text.includes('/ToUnicode'), 'text can be selected');
  }
  const page = await file(screen, 'Page file');
  assert.ok(page.startsWith('<!doctype html>') && !/<(script|link|img)/.test(page));
});
