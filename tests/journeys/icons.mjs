// Draws the PNG icons from public/icons/egg.svg: `node tests/journeys/icons.mjs`. Run it when the egg changes.

import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { startChromium } from './kit/browser.mjs';
import { palettePng } from './kit/png.mjs';

const folder = path.resolve(import.meta.dirname, '../../public/icons');
const PAPER = '#f7f4ec';
const COLOURS = [[247, 244, 236, 255], [15, 49, 85, 255], [255, 253, 247, 255], [11, 34, 57, 255], [11, 34, 57, 0]];
// A mask may cut everything outside the middle four fifths, so the egg keeps well inside.
const ICONS = [
  { name: 'egg-192', size: 192, egg: 1, ground: null },
  { name: 'egg-512', size: 512, egg: 1, ground: null },
  { name: 'egg-maskable', size: 512, egg: 0.7, ground: PAPER },
];

const svg = await readFile(path.join(folder, 'egg.svg'), 'utf8');
const browser = await startChromium();
const page = await browser.newPage();
for (const { name, size, egg, ground } of ICONS) {
  const pixels = await page.evaluate(draw, { svg, size, egg, ground });
  await writeFile(path.join(folder, `${name}.png`), palettePng(size, size, pixels, COLOURS));
}
await browser.close();

async function draw({ svg, size, egg, ground }) {
  const image = new Image();
  image.src = `data:image/svg+xml,${encodeURIComponent(svg.replace('<svg', '<svg width="512" height="512"'))}`;
  await image.decode();
  const canvas = Object.assign(document.createElement('canvas'), { width: size, height: size });
  const context = canvas.getContext('2d');
  if (ground) {
    context.fillStyle = ground;
    context.fillRect(0, 0, size, size);
  }
  context.drawImage(image, (size - size * egg) / 2, (size - size * egg) / 2, size * egg, size * egg);
  return [...context.getImageData(0, 0, size, size).data];
}
