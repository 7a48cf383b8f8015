// First light in the other engines: the main job on the built folder, and the app with the server stopped, in Firefox and
// in WebKit. `node tests/journeys/engines.mjs [firefox | webkit]`. A browser that is missing fails.

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

/** Runs the journey in one engine; 1 if it failed. */
async function inEngine(name, start) {
  const began = Date.now();
  const server = await new Server(DIST).start();
  const driver = await start();
  let fault = null;
  try {
    await firstLight(new Plain(driver, server));
  } catch (error) {
    fault = error;
  }
  await driver.end();
  await server.stop();
  console.log(`${fault ? 'FAILED' : 'passed'} ${((Date.now() - began) / 1000).toFixed(1)} s  first light in ${name}`);
  if (fault) console.log(fault.stack ?? fault);
  return fault ? 1 : 0;
}

/** Place → room with a west window → set-up → wish → slots → save → reload with the server stopped → still there. */
async function firstLight(screen) {
  await screen.open();
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
  await screen.see(/Saved/);
  await screen.control('Saved: ');
  await screen.until(() => document.querySelector('.kept')?.textContent.trim() === 'Saved', 'Saved, on the disk');

  await screen.keptOffline();
  await screen.server.stop();
  await screen.reload();
  await screen.control('Saved: ');
  await screen.go('#projects');
  await screen.see(/1 location.*1 set-up/);
  const says = await screen.driver.run(() => document.querySelector('meta[http-equiv=Content-Security-Policy]').content);
  assert.match(says, /default-src 'none'/);
}
