// A table of tests/data: comment lines, a header, rows without quotes.

import { readFileSync } from 'node:fs';
import path from 'node:path';

/** Its rows as objects; an empty table is a failure. */
export function table(name) {
  const folder = process.env.SLANTLIGHT_REFERENCE ?? path.resolve(import.meta.dirname, '../../data');
  const lines = readFileSync(path.join(folder, name), 'utf8').split('\n').filter((line) => line && !line.startsWith('#'));
  const header = lines.shift().split(',');
  if (lines.length === 0) throw new Error(`${name} has no rows`);
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, place) => [header[place], cell])));
}
