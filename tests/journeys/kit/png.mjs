// Writes a small PNG: few colours, one byte a pixel. Screenshots hold 24 bits a pixel and weigh five times as much.

import { crc32, deflateSync } from 'node:zlib';

const SIGNATURE = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);
const STEPS = 6;

/** `colours` are [r, g, b, a] that matter; mixes of any two smooth the edges between them. `rgba` holds the pixels. */
export function palettePng(width, height, rgba, colours) {
  const palette = withMixes(colours);
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) rows[y * (width + 1) + x + 1] = nearest(palette, rgba, (y * width + x) * 4);
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', header),
    chunk('PLTE', Buffer.from(palette.flatMap((colour) => colour.slice(0, 3)))),
    chunk('tRNS', Buffer.from(palette.map((colour) => colour[3]))),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function withMixes(colours) {
  const all = [...colours];
  for (const [index, one] of colours.entries()) {
    for (const other of colours.slice(index + 1)) {
      for (let step = 1; step < STEPS; step++) {
        all.push(one.map((value, channel) => Math.round(value + ((other[channel] - value) * step) / STEPS)));
      }
    }
  }
  return all;
}

function nearest(palette, rgba, at) {
  const off = (colour) => colour.reduce((sum, value, channel) => sum + (value - rgba[at + channel]) ** 2, 0);
  return palette.reduce((best, colour, index) => (off(colour) < off(palette[best]) ? index : best), 0);
}

function chunk(name, data) {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}
