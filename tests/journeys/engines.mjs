// First light in the other engines: the main job on the built folder, there and back from an exported file, and with the
// server stopped, in Firefox and in WebKit. `node tests/journeys/engines.mjs [firefox | webkit]`. A browser that is
// missing fails.

import assert from 'node:assert/strict';
import path from 'node:path';
import { startFirefox } from './kit/firefox.mjs';
import { KEY, Plain } from './kit/plain.mjs';
import { Server } from './kit/server.mjs';
import { startWebKit } from './kit/webkit.mjs';

const ENGINES = { firefox: startFirefox, webkit: startWebKit };
const DIST = process.env.DIST ?? path.resolve(import.meta.dirname, '../../dist');

let failed = 0;
for (const [name, start] of Object.entries(ENGINES)) {
  if (name.includes(process.argv[2] ?? '')) failed += await inEngine(name, start);
}
process.exit(failed === 0 ? 0 : 1);

/** Runs the journeys in one engine, each in a browser of its own; the number of failures. */
async function inEngine(name, start) {
  let faults = 0;
  for (const [title, journey] of Object.entries({ 'first light, and back from a file': thereAndBack, 'the same without a server': alone })) {
    const began = Date.now();
    const server = await new Server(DIST).start();
    const driver = await start();
    let fault = null;
    try {
      await journey(new Plain(driver, server));
    } catch (error) {
      fault = error;
    }
    await driver.end();
    await server.stop();
    console.log(`${fault ? 'FAILED' : 'passed'} ${((Date.now() - began) / 1000).toFixed(1)} s  ${name}: ${title}`);
    if (fault) console.log(fault.stack ?? fault);
    if (fault) faults += 1;
  }
  return faults;
}

/** The main job → export → wipe → import → the same bytes. */
async function thereAndBack(screen) {
  await screen.open();
  await mainJob(screen);
  const kept = await exported(screen);
  assert.equal(JSON.parse(kept).format, 'slantlight-project');
  await screen.wipe();
  await screen.open();
  await screen.see(/no project yet/);
  await screen.opens(kept, () => screen.tap('Open a project file'));
  await screen.tap('Take it in');
  await screen.saved();
  assert.equal(await exported(screen), kept, 'the same bytes');
}

/** The main job by what the worker has kept: nothing answers any more. */
async function alone(screen) {
  await screen.open();
  await screen.keptOffline();
  await screen.reload();
  await screen.server.stop();
  await mainJob(screen);
  const says = await screen.driver.run(() => document.querySelector('meta[http-equiv=Content-Security-Policy]').content);
  assert.match(says, /default-src 'none'/);
}

/** Pasted place → room with a west window → set-up → wish → slots → save → reload → still there. */
async function mainJob(screen) {
  await screen.tap('Paste a place');
  await screen.type('Paste a place', '40.6405, -8.6538');
  await screen.tap('Read the pasted place');
  await screen.see(/40\.6405 N 8\.6538 W/);
  await screen.tap('Add a room');
  await screen.keys('Window wall faces', KEY.PageUp, 7);
  await screen.tap('Add this room');
  await screen.tap('+ tall window');
  await screen.see(/1 in this room/);

  await screen.tap('Scenes');
  await screen.tap('Add a scene');
  await screen.see(/1 · Scene 1/);
  await screen.choose('Where', 'Mark 1');
  await screen.tap('rim');
  await screen.keys('Lens bearing', KEY.PageUp, 25);
  await screen.see(/works on \d+ days? a year/);
  await screen.tap('Save: ');
  await screen.control('Saved: ');
  await screen.saved();
  await screen.reload();
  await screen.control('Saved: ');
}

async function exported(screen) {
  await screen.go('#projects');
  await screen.see(/1 location.*1 set-up/);
  return screen.given(() => screen.tap('Export'));
}
