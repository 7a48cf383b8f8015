// Pictures of every screen with the demo project, phone and desk, light and dark, and a contact sheet of all:
// `node tests/journeys/shots.mjs [part of a name]`. They go to tests/out and are looked at by people.

import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { startChromium } from './kit/browser.mjs';
import { makeAnL } from './kit/l-room.mjs';
import { DESK, OUT, PHONE, Screen } from './kit/screen.mjs';
import { BARE, OF_THE_DEMO } from './kit/screens.mjs';
import { Server } from './kit/server.mjs';

/** Name of the picture and the fragment that leads there; the first is the start screen, before any project. */
const ROUTES = [['start', null], ['demo', '#demo'], ...BARE.slice(1), ...OF_THE_DEMO];
const DEVICES = [['phone', PHONE], ['desk', DESK]];
const SCHEMES = ['light', 'dark'];
// A March afternoon, so that pictures of two builds can be laid side by side.
const MOMENT = '2027-03-11T17:28:00Z';

const part = process.argv[2] ?? '';
const server = await new Server(process.env.DIST ?? path.resolve(import.meta.dirname, '../../dist')).start();
const browser = await startChromium();
rmSync(path.join(OUT, 'shots'), { recursive: true, force: true });
mkdirSync(path.join(OUT, 'shots'), { recursive: true });
for (const [deviceName, device] of DEVICES) {
  for (const colorScheme of SCHEMES) await walk(deviceName, device, colorScheme);
}
await contactSheet();
await browser.close();
await server.stop();

async function walk(deviceName, device, colorScheme) {
  const screen = await Screen.fresh(browser, server, device, { colorScheme });
  await screen.at(MOMENT);
  await screen.open();
  for (const [name, fragment] of ROUTES) {
    if (!`${name}-${deviceName}-${colorScheme}`.includes(part) && fragment !== '#demo') continue;
    if (fragment !== null) await screen.page.evaluate((there) => { location.hash = there; }, fragment);
    await screen.page.evaluate(() => document.fonts.ready.then(() => new Promise(requestAnimationFrame)));
    await screen.page.waitForTimeout(300);
    await screen.picture(`shots/${name}-${deviceName}-${colorScheme}`);
  }
  await anL(screen, `${deviceName}-${colorScheme}`);
  await screen.close();
}

/** A room that is no box, from a corner and from above, and the lighting plan of a set-up in it. */
async function anL(screen, kind) {
  if (!['room-l', 'room-l-above', 'lighting-plan-l'].some((name) => `${name}-${kind}`.includes(part))) return;
  await makeAnL(screen);
  const picture = async (name) => {
    await screen.page.evaluate(() => window.scrollTo(0, 0));
    await screen.page.waitForTimeout(300);
    await screen.picture(`shots/${name}-${kind}`);
  };
  await picture('room-l');
  await screen.tap('From above', 'button');
  await picture('room-l-above');
  await screen.page.evaluate(() => { location.hash = '#lighting-plan/set-up-4a'; });
  await screen.page.locator('.plan-paper svg').waitFor();
  await picture('lighting-plan-l');
}

async function contactSheet() {
  const names = readdirSync(path.join(OUT, 'shots')).filter((name) => name.endsWith('.png')).sort();
  const figures = names.map((name) => `<figure><img src="shots/${name}"><figcaption>${name}</figcaption></figure>`);
  const style = 'body{font:14px sans-serif;display:flex;flex-wrap:wrap;gap:12px;margin:12px} figure{margin:0} img{height:420px}';
  const file = path.join(OUT, 'contact.html');
  writeFileSync(file, `<!doctype html><meta charset="utf-8"><title>Contact sheet</title><style>${style}</style>${figures.join('\n')}`);
  const page = await browser.newPage({ viewport: { width: 1800, height: 900 } });
  await page.goto(`file://${file}`);
  await page.screenshot({ path: path.join(OUT, 'contact.png'), fullPage: true });
  console.log(`${names.length} pictures in tests/out/shots, all on one in tests/out/contact.png`);
}
