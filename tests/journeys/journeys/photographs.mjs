// Photographs of a scout: taken in, made smaller, carried by a file on wish, kept out of it else, refused where no room is.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';

const LONG_SIDE = 1280;

async function go(screen, fragment) {
  await screen.page.evaluate((to) => { location.hash = to; }, fragment);
}

/** A picture of noise, larger than what is kept. */
async function picture(screen, width, height) {
  return Buffer.from(await screen.page.evaluate(([width, height]) => {
    const canvas = Object.assign(document.createElement('canvas'), { width, height });
    const paper = canvas.getContext('2d');
    for (let spot = 0; spot < 4000; spot += 1) {
      paper.fillStyle = `hsl(${(spot * 47) % 360} 60% ${20 + (spot * 13) % 60}%)`;
      paper.fillRect((spot * 197) % width, (spot * 331) % height, 60, 60);
    }
    return canvas.toDataURL('image/png').split(',')[1];
  }, [width, height]), 'base64');
}

async function take(screen, buffer, name = 'scout.png') {
  const [chooser] = await Promise.all([
    screen.page.waitForEvent('filechooser'),
    screen.tap('Take or choose a photograph'),
  ]);
  await chooser.setFiles({ name, mimeType: 'image/png', buffer });
}

function pictures(screen) {
  return screen.page.locator('.photographs img');
}

async function exported(screen, carried) {
  await go(screen, '#projects');
  const box = screen.page.getByRole('checkbox', { name: /The file carries the photographs/ });
  if (carried) await box.check();
  // Nothing is sent before the pictures are in memory; a tap too early says so.
  await screen.page.waitForTimeout(500);
  return (await screen.download(() => screen.tap('Export'))).text;
}

journey('photographs are made smaller, stay here, and a file carries them only on wish', async ({ screen }) => {
  await screen.open('#demo');
  await go(screen, '#location/sail-loft');
  await take(screen, await picture(screen, 3000, 2000));
  await pictures(screen).first().waitFor();
  const size = await pictures(screen).first().evaluate((image) => image.decode().then(() => [image.naturalWidth, image.naturalHeight]));
  assert.deepEqual(size, [LONG_SIDE, Math.round(LONG_SIDE * 2 / 3)]);
  await screen.type('What it shows', 'west wall, from the bench');
  await screen.keys('Tab');
  await screen.saved();
  await screen.reload();
  await pictures(screen).first().waitFor();
  assert.equal(await screen.value('What it shows'), 'west wall, from the bench');

  const bare = await exported(screen, false);
  assert.ok(bare.includes('west wall, from the bench') && !bare.includes('jpeg_base64'));
  const full = await exported(screen, true);
  assert.equal(JSON.parse(full).locations[0].photographs[0].jpeg_base64.slice(0, 4), '/9j/');

  await screen.page.goto('about:blank');
  await screen.wipe();
  await screen.open('#projects');
  await screen.pick(() => screen.tap('Open a project file'), 'scout.json', full);
  await screen.see(/1 photograph$/);
  await screen.tap('Take it in');
  await screen.saved();
  await screen.reload();
  assert.equal(await exported(screen, true), full, 'export, wipe, import, export: equal bytes');
});

journey('a photograph is removed and brought back, and a file without pictures says what is missing', async ({ screen }) => {
  await screen.open('#demo');
  await go(screen, '#location/sail-loft');
  await take(screen, await picture(screen, 400, 300));
  await pictures(screen).first().waitFor();
  await screen.saved();
  const bare = await exported(screen, false);
  await go(screen, '#location/sail-loft');
  await screen.page.locator('.photographs').getByRole('button', { name: 'Remove' }).tap();
  await pictures(screen).first().waitFor({ state: 'detached' });
  await screen.tap('Undo');
  await pictures(screen).first().waitFor();

  await screen.page.goto('about:blank');
  await screen.wipe();
  await screen.open('#projects');
  await screen.pick(() => screen.tap('Open a project file'), 'bare.json', bare);
  await screen.tap('Take it in');
  await go(screen, '#location/sail-loft');
  await screen.see(/The picture is not in this browser/);
});

journey('a photograph that is no picture, and one without room, change nothing and are said', async ({ screen }) => {
  await screen.open('#demo');
  await screen.saved();
  await go(screen, '#location/sail-loft');
  await take(screen, Buffer.from('<svg onload=alert(1)>'), 'evil.png');
  await screen.see(/cannot draw that picture.*Nothing was changed/);
  await screen.page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (value, key) {
      if (String(key).includes('picture')) throw new DOMException('full, says a journey', 'QuotaExceededError');
      return put.call(this, value, key);
    };
  });
  await take(screen, await picture(screen, 400, 300));
  await screen.see(/no room for it: this browser's storage is full/);
  assert.equal(await screen.page.locator('.photographs li').count(), 0);
});

journey('a file that brings another picture under the id of one that is here leaves ours', async ({ screen }) => {
  await screen.open('#demo');
  await go(screen, '#location/sail-loft');
  await take(screen, await picture(screen, 400, 300));
  await pictures(screen).first().waitFor();
  await screen.saved();
  const ours = await exported(screen, true);
  const strange = JSON.parse(ours);
  const [photograph] = strange.locations[0].photographs;
  photograph.jpeg_base64 = photograph.jpeg_base64.slice(0, -40);
  const came = JSON.stringify(strange);
  for (const taken of ['Put the two together', 'Keep as a second project']) {
    await screen.pick(() => screen.tap('Open a project file'), 'came.json', came);
    await screen.tap(taken);
    await screen.saved();
    await screen.reload();
    assert.equal(pictured(await exported(screen, true)), pictured(ours), taken);
  }
});

function pictured(text) {
  return JSON.parse(text).locations[0].photographs[0].jpeg_base64;
}
