// Reads a PDF as a viewer's search would: the text of each page, by the fonts' own tables of letters, and the paper's size.
// Enough for what Chromium prints (PDF 1.4 with plain objects, deflated streams, hexadecimal strings).

import assert from 'node:assert/strict';
import { inflateSync } from 'node:zlib';

/** [{ width, height, text }], sizes in points. */
export function pages(pdf) {
  const objects = objectsOf(pdf);
  const all = [...objects.values()].filter(({ head }) => /\/Type\s*\/Page\b/.test(head));
  return all.map(({ head }) => {
    const [, , width, height] = head.match(/\/MediaBox\s*\[([^\]]*)\]/)[1].trim().split(/\s+/).map(Number);
    const letters = fontsOf(head, objects);
    const content = references(head, 'Contents').map((number) => objects.get(number).stream.toString('latin1'));
    return { width, height, text: textOf(content.join('\n'), letters) };
  });
}

/** Every object by its number, with its stream unpacked. */
function objectsOf(pdf) {
  const raw = pdf.toString('latin1');
  const found = new Map();
  for (const match of raw.matchAll(/(\d+) 0 obj\b([\s\S]*?)(?:stream\r?\n|endobj)/g)) {
    const [whole, number, head] = match;
    const from = match.index + whole.length;
    const length = whole.includes('stream') ? Number(head.match(/\/Length (\d+)/)?.[1] ?? 0) : 0;
    const bytes = pdf.subarray(from, from + length);
    found.set(Number(number), { head, stream: head.includes('/FlateDecode') ? inflateSync(bytes) : bytes });
  }
  assert.ok(found.size > 0, 'a PDF with objects');
  return found;
}

function references(head, name) {
  const value = head.match(new RegExp(`/${name}\\s*(\\[[^\\]]*\\]|\\d+ 0 R)`))?.[1] ?? '';
  return [...value.matchAll(/(\d+) 0 R/g)].map((one) => Number(one[1]));
}

/** What each glyph of each font of a page stands for. */
function fontsOf(head, objects) {
  const resources = references(head, 'Resources').map((number) => objects.get(number).head).join('') + head;
  const fonts = resources.match(/\/Font\s*<<([\s\S]*?)>>/)?.[1] ?? '';
  const read = ([, name, number]) => {
    const [table] = references(objects.get(Number(number)).head, 'ToUnicode');
    return [name, lettersOf(table ? objects.get(table).stream.toString('latin1') : '')];
  };
  return new Map([...fonts.matchAll(/\/(\w+)\s+(\d+) 0 R/g)].map(read));
}

/** Letters by their codes, and how many digits a code has. */
function lettersOf(table) {
  const letters = new Map();
  letters.digits = table.match(/begincodespacerange\s*<(\w+)>/)?.[1].length ?? 4;
  const code = (hex) => Number.parseInt(hex, 16);
  const word = (hex) => String.fromCharCode(...hex.match(/.{4}/g).map(code));
  for (const [, lines] of table.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, from, to] of lines.matchAll(/<(\w+)>\s*<(\w+)>/g)) letters.set(code(from), word(to));
  }
  for (const [, lines] of table.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, from, to, first] of lines.matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g)) {
      for (let at = code(from); at <= code(to); at++) letters.set(at, String.fromCodePoint(code(first) + at - code(from)));
    }
  }
  return letters;
}

function textOf(content, fonts) {
  let letters = lettersOf('');
  let text = '';
  for (const [, font, strings, moved] of content.matchAll(/\/(\w+) [\d.]+ Tf|((?:<[0-9A-Fa-f]+>|\[[^\]]*\])\s*T[jJ])|\b(BT|Td|Tm)\b/g)) {
    if (font) letters = fonts.get(font) ?? lettersOf('');
    else if (moved) text += moved === 'BT' ? '\n' : '';
    else for (const [, hex] of strings.matchAll(/<([0-9A-Fa-f]+)>/g)) text += (hex.match(new RegExp(`.{${letters.digits}}`, 'g')) ?? []).map((glyph) => letters.get(Number.parseInt(glyph, 16)) ?? '').join('');
  }
  return text;
}
