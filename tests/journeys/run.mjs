// Runs the journeys against the built folder: `node tests/journeys/run.mjs [part of a name]`.

import { readdirSync } from 'node:fs';
import path from 'node:path';
import { startChromium } from './kit/browser.mjs';
import { runAll } from './kit/journey.mjs';

const here = import.meta.dirname;
for (const file of readdirSync(path.join(here, 'journeys')).sort()) {
  await import(path.join(here, 'journeys', file));
}
const browser = await startChromium();
const failed = await runAll(browser, process.env.DIST ?? path.resolve(here, '../../dist'), process.argv[2]);
await browser.close();
process.exit(failed === 0 ? 0 : 1);
