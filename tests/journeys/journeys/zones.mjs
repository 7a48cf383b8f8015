// Local times in the browser: a sample of zones.csv, read off the page of the present. The app has its zones from the
// engine's own calendar, so that rows newer than the engine's data are left out, and their number is printed.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';
import { table } from '../kit/table.mjs';

/** Rows of each kind: plain, gap, overlap. */
const EACH = 8;
/** An engine that is further behind than this share is no witness. */
const MOST_NEWER = 0.25;

journey('local times around clock changes, as the table of zones has them', async ({ screen }) => {
  const rows = ['plain', 'gap', 'overlap'].flatMap((kind) => sample(table('zones.csv').filter((row) => row.kind === kind)));
  const zones = [...new Set(rows.map((row) => row.zone))];
  await screen.at('2027-03-01T12:00:00Z');
  await screen.open();
  await screen.pick(() => screen.tap('Open a project file'), 'zones.txt', projectIn(zones));
  await screen.tap('Take it in');
  await screen.saved();

  let newer = 0;
  for (const row of rows) {
    for (const [instant, offset] of momentsOf(row)) {
      if (await engineOffset(screen.page, row.zone, instant) !== offset) {
        newer += 1;
        continue;
      }
      await screen.at(instant);
      await screen.page.goto(`${screen.server.address}#location/at-${zones.indexOf(row.zone)}`);
      await screen.reload();
      // The page of the place must stand before the address changes, or the old one answers.
      await screen.page.getByRole('heading', { name: row.zone, level: 1 }).waitFor();
      await screen.page.evaluate(() => { location.hash = '#now'; });
      await screen.see(new RegExp(`${clockAt(instant, offset)} ${named(offset)}$`));
    }
  }
  console.log(`      ${rows.length} rows of zones.csv in ${zones.length} zones, ${newer} newer than this engine's data`);
  assert.ok(newer <= MOST_NEWER * rows.length, `${newer} of ${rows.length}: this engine's zone data is too old`);
});

/** So many rows, evenly from all. */
function sample(rows) {
  return Array.from({ length: EACH }, (_, n) => rows[Math.floor((n * rows.length) / EACH)]);
}

/** The row's instants, each with the offset in force. In a gap the columns name those before and after the change. */
function momentsOf({ kind, utc_first, utc_second, offset_first_s, offset_second_s }) {
  const [first, second] = [Number(offset_first_s), Number(offset_second_s)];
  if (kind === 'plain') return [[utc_first, first]];
  return kind === 'gap' ? [[utc_first, second], [utc_second, first]] : [[utc_first, first], [utc_second, second]];
}

/** Seconds that the engine itself is ahead of UTC. */
function engineOffset(page, zone, instant) {
  return page.evaluate(([timeZone, at]) => {
    const parts = new Intl.DateTimeFormat('en-US', {
      timeZone, hourCycle: 'h23', year: 'numeric', month: 'numeric', day: 'numeric', hour: 'numeric', minute: 'numeric', second: 'numeric',
    }).formatToParts(new Date(at));
    const [year, month, day, hour, minute, second] = ['year', 'month', 'day', 'hour', 'minute', 'second']
      .map((type) => Number(parts.find((part) => part.type === type).value));
    return (Date.UTC(year, month - 1, day, hour, minute, second) - Date.parse(at)) / 1000;
  }, [zone, instant]);
}

/** "17:28". */
function clockAt(instant, offset) {
  return new Date(Date.parse(instant) + offset * 1000).toISOString().slice(11, 16);
}

/** "UTC", "UTC\\+1", "UTC−3:30": for a regular expression. */
function named(offset) {
  if (offset === 0) return 'UTC';
  const [hours, minutes] = [Math.floor(Math.abs(offset) / 3600), Math.abs(offset) / 60 % 60];
  return `UTC${offset < 0 ? '−' : '\\+'}${hours}${minutes ? `:${String(minutes).padStart(2, '0')}` : ''}`;
}

/** A project with a place in each zone. */
function projectIn(zones) {
  const locations = zones.map((zone, n) => ({
    id: `at-${n}`, name: zone, latitude_deg: 0, longitude_deg: 0, elevation_m: 0, zone,
  }));
  return JSON.stringify({ format: 'slantlight-project', version: 1, id: 'zones', title: 'Zones', locations });
}
