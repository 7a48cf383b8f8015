// Lighthouse on the built folder: the median of five runs, each in a fresh browser, as Lighthouse throttles a phone by
// itself (150 ms, 1.6 Mbit/s, a processor four times slower, worked out from what was loaded unthrottled).

import path from 'node:path';
import lighthouse from 'lighthouse';
import { Mortal } from '../kit/killed.mjs';
import { Server } from '../kit/server.mjs';

const DIST = process.env.DIST ?? path.resolve(import.meta.dirname, '../../../dist');
const RUNS = 5;
/** Categories and what they should reach, in hundredths. */
const BARS = { performance: 95, accessibility: 100, 'best-practices': 100 };
/** Times that are printed beside them, ms. */
const TIMES = ['first-contentful-paint', 'largest-contentful-paint', 'total-blocking-time', 'interactive', 'speed-index'];

const runs = [];
for (let run = 0; run < RUNS; run++) runs.push(await once());
console.log(`Lighthouse, median of ${RUNS}`.padEnd(46), '    median', '      hold', '  all');
for (const [name, bar] of Object.entries(BARS)) say(name, runs.map(({ categories }) => Math.round(categories[name].score * 100)), `≥ ${bar}`);
for (const name of TIMES) say(`  ${name}, ms`, runs.map(({ audits }) => Math.round(audits[name]?.numericValue)));
for (const { id, title } of failing(runs[0])) console.log(`  not passed: ${id}: ${title}`);

async function once() {
  const server = await new Server(DIST).start();
  const browser = new Mortal();
  try {
    const { port } = new URL(await browser.launch());
    const { lhr } = await lighthouse(server.address, { port: Number(port), onlyCategories: Object.keys(BARS), logLevel: 'error' });
    if (lhr.runtimeError) throw new Error(lhr.runtimeError.message);
    return lhr;
  } finally {
    await browser.kill();
    browser.forget();
    await server.stop();
  }
}

/** What counts in a category and did not pass. */
function failing({ categories, audits }) {
  const counted = Object.values(categories).flatMap(({ auditRefs }) => auditRefs).filter(({ weight }) => weight > 0);
  return counted.map(({ id }) => audits[id]).filter(({ score }) => score !== null && score < 0.9);
}

function say(name, numbers, hold = '') {
  const median = [...numbers].sort((one, other) => one - other)[Math.floor(numbers.length / 2)];
  console.log(name.padEnd(46), String(median).padStart(10), hold.padStart(10), ` ${numbers.join(' ')}`);
}
