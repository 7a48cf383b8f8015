// Sending by the system's sheet: engines differ in which files they let through. Tried in order: .json, .txt, the text
// itself, a download. The sheet must be asked within the tap, or engines refuse it.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { journey } from '../kit/journey.mjs';
import { PHONE } from '../kit/screen.mjs';

/** A reader of such pictures that is not ours. */
const READER = await readFile(createRequire(import.meta.url).resolve('jsqr'), 'utf8');

/** What each engine lets through, and what must arrive there. */
const ENGINES = [
  { lets: ['.json', '.txt', 'text'], arrives: '.slantlight.json' },
  { lets: ['.txt', 'text'], arrives: '.slantlight.txt' },
  { lets: ['text'], arrives: 'text' },
];

for (const { lets, arrives } of ENGINES) {
  journey(`an engine that shares ${lets.join(', ')} is sent ${arrives}`, async ({ screen }) => {
    await stub(screen, { lets });
    await opened(screen);
    await screen.tap('Send');
    await screen.see(/Last copy/);
    const sent = await screen.page.evaluate(() => window.sent);
    assert.equal(sent.length, 1);
    assert.ok(sent[0].inTap, 'asked within the tap');
    assert.ok(sent[0].name.endsWith(arrives), sent[0].name);
    assert.equal(JSON.parse(sent[0].text).title, 'Salt and thread');
  });
}

journey('an engine without a sheet, or whose sheet refuses, gives a download', async ({ screen, fresh }) => {
  for (const [one, options] of [[screen, { without: true }], [await fresh(), { lets: ['.json'], refuses: 'NotAllowedError' }]]) {
    await stub(one, options);
    await opened(one);
    const file = await one.download(() => one.tap('Send'));
    assert.match(file.name, /\.slantlight\.txt$/);
    assert.equal(JSON.parse(file.text).title, 'Salt and thread');
  }
});

journey('a sheet that is closed again sends nothing and says nothing', async ({ screen }) => {
  await stub(screen, { lets: ['.json'], refuses: 'AbortError' });
  await opened(screen);
  await screen.tap('Send');
  await screen.page.waitForFunction(() => window.sent.length === 1);
  assert.equal(await screen.page.getByText(/in the downloads/).count(), 0);
});

journey('a set-up is sent from its own page', async ({ screen }) => {
  await stub(screen, { lets: ['text'] });
  await screen.at('2027-03-01T12:00:00Z');
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.page.evaluate(() => { location.hash = '#set-up/set-up-4a'; });
  await screen.tap('Send this set-up');
  await screen.page.waitForFunction(() => window.sent.length === 1);
  const [{ text, inTap }] = await screen.page.evaluate(() => window.sent);
  assert.ok(inTap);
  assert.match(text, /4 Mending the sail, set-up A\nSail loft, .*by the bench\n.*\d\d:\d\d–\d\d:\d\d\n.*° high/);
});

for (const colorScheme of ['light', 'dark']) {
  journey(`another phone's camera reads a set-up's link off the screen, ${colorScheme}`, async ({ fresh }) => {
    const screen = await fresh(PHONE, { colorScheme });
    await screen.at('2027-03-01T12:00:00Z');
    await screen.open('#demo');
    await screen.see('4 · Mending the sail');
    await screen.page.evaluate(() => { location.hash = '#set-up/set-up-4a'; });
    await screen.see('Best slots');
    await screen.page.evaluate(() => { for (const fold of document.querySelectorAll('details')) fold.open = true; });
    await screen.tap('This set-up as a link');
    const address = await screen.value('Link');
    const seen = await screen.page.locator('.code').screenshot();
    assert.equal(await readOff(screen.page, seen), address);

    const receiver = await fresh();
    await receiver.page.goto(address);
    await receiver.started();
    await receiver.see('Take this in?');
    await receiver.see(/1 location, 1 scene, 1 set-up/);
  });
}

/** What the squares of a picture say. */
async function readOff(page, picture) {
  await page.evaluate(READER);
  return page.evaluate(async (encoded) => {
    const image = Object.assign(new Image(), { src: `data:image/png;base64,${encoded}` });
    await image.decode();
    const canvas = Object.assign(document.createElement('canvas'), { width: image.width, height: image.height });
    const paper = canvas.getContext('2d');
    paper.drawImage(image, 0, 0);
    const { data, width, height } = paper.getImageData(0, 0, image.width, image.height);
    return window.jsQR(data, width, height, { inversionAttempts: 'dontInvert' })?.data ?? null;
  }, picture.toString('base64'));
}

/** The engine's sheet in our hands: what it lets through, and the name of the error with which it refuses. */
async function stub(screen, options) {
  await screen.page.addInitScript(({ lets = [], refuses, without }) => {
    window.sent = [];
    if (without) {
      delete Navigator.prototype.share;
      delete Navigator.prototype.canShare;
      return;
    }
    const kind = ({ files }) => files?.[0]?.name.match(/\.\w+$/)[0] ?? 'text';
    Navigator.prototype.canShare = (data) => lets.includes(kind(data));
    Navigator.prototype.share = async (data) => {
      const inTap = navigator.userActivation.isActive;
      const text = await (data.files?.[0]?.text() ?? data.text);
      window.sent.push({ name: data.files?.[0]?.name ?? 'text', text, inTap });
      if (!inTap || !lets.includes(kind(data))) throw new DOMException('not so', 'NotAllowedError');
      if (refuses) throw new DOMException('refused by a journey', refuses);
    };
  }, options);
}

async function opened(screen) {
  await screen.open('#demo');
  await screen.see('4 · Mending the sail');
  await screen.page.evaluate(() => { location.hash = '#projects'; });
}
