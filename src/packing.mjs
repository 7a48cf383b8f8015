// Makes a wasm file ready to be packed:
//
//     node src/packing.mjs app.wasm names.json
//
// What the glue hands over and asks for gets the short names that it has there; each bears a hash else, which packs badly.
//
// Functions are numbered in the order in which they pack best, in place of their names. gzip looks back 32 kB, no further, so
// what is alike must lie side by side: the copies of one generic, which bear one name but for a hash, the small ones first; and
// apart from them the stubs that lead from one part of the app into another. `./dev` has wasm-opt sort by what is written here.

import { readFileSync, writeFileSync } from 'node:fs';

const CUSTOM = 0;
const IMPORT = 2;
const EXPORT = 7;
const CODE = 10;
// Kinds of imports; the one left is memory.
const [FUNCTION, TABLE, GLOBAL] = [0, 1, 3];
const HASH = /17h[0-9a-f]{16}E|::h[0-9a-f]{16}$/;
const STUB = / (indirect_call|local)_shim$/;

const [file, list] = process.argv.slice(2);
const short = new Map(Object.entries(JSON.parse(readFileSync(list, 'utf8'))));
const bytes = readFileSync(file);
let at = 8;
const others = [bytes.subarray(0, at)];
const sizes = [];
const names = new Map();
while (at < bytes.length) section();
writeFileSync(file, Buffer.concat([...others, numbered()]));

/** Reads on behind a section; all but the names stay as they are. */
function section() {
  const [begin, kind] = [at, bytes[at++]];
  const end = number() + at;
  if (kind === CODE) many(() => { sizes.push(number()); at += sizes.at(-1); });
  const isNames = kind === CUSTOM && text() === 'name';
  while (isNames && at < end) subsection();
  if (kind === IMPORT || kind === EXPORT) others.push(renamed(kind));
  else if (!isNames) others.push(bytes.subarray(begin, end));
  at = end;
}

/** What comes from the glue, or goes to it, under its short names. */
function renamed(kind) {
  const parts = [];
  const count = many(() => {
    if (kind === IMPORT) parts.push(long(Buffer.from(text())));
    const name = text();
    const begin = at;
    described(kind);
    parts.push(long(Buffer.from(short.get(name) ?? name)), bytes.subarray(begin, at));
  });
  return Buffer.concat([Buffer.from([kind]), long(Buffer.concat([leb(count), ...parts]))]);
}

/** Reads on behind what an export or import is: its kind, and behind that an index, a type, or what a table or memory may hold. */
function described(section) {
  const kind = bytes[at++];
  if (section === EXPORT || kind === FUNCTION) number();
  else if (kind === GLOBAL) at += 2;
  else limits(kind === TABLE);
}

function limits(isTable) {
  if (isTable) at++;
  const hasMost = bytes[at++] & 1;
  number();
  if (hasMost) number();
}

/** Of the names only those of functions count. */
function subsection() {
  const isFunctions = bytes[at++] === 1;
  const end = number() + at;
  if (isFunctions) many(() => names.set(number(), text()));
  at = end;
}

/** The section of names, with a number for each function that is made here. Those that are imported come before them. */
function numbered() {
  const imported = Math.max(...names.keys()) + 1 - sizes.length;
  const functions = sizes.map((size, place) => {
    const name = names.get(imported + place) ?? '';
    return { index: imported + place, size, name: name.replace(HASH, ''), isStub: STUB.test(name) };
  });
  const sorted = functions.toSorted((one, other) => one.isStub - other.isStub || order(one.name, other.name) || one.size - other.size);
  sorted.forEach((each, rank) => { each.rank = String(rank).padStart(6, '0'); });
  const list = [leb(functions.length), ...functions.flatMap(({ index, rank }) => [leb(index), long(Buffer.from(rank))])];
  const body = Buffer.concat([long(Buffer.from('name')), Buffer.from([1]), long(Buffer.concat(list))]);
  return Buffer.concat([Buffer.from([CUSTOM]), long(body)]);
}

function order(one, other) {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}

function many(read) {
  const count = number();
  for (let left = count; left > 0; left--) read();
  return count;
}

function text() {
  const length = number();
  at += length;
  return bytes.toString('latin1', at - length, at);
}

function number() {
  let value = 0;
  for (let factor = 1; ; factor *= 128) {
    value += (bytes[at] & 127) * factor;
    if (bytes[at++] < 128) return value;
  }
}

function leb(value) {
  const digits = [];
  for (; value > 127; value >>>= 7) digits.push((value & 127) | 128);
  return Buffer.from([...digits, value]);
}

function long(what) {
  return Buffer.concat([leb(what.length), what]);
}
