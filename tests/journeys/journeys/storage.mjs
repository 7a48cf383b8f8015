// A browser that keeps nothing: said at once, the app goes on, and the project can still be taken away as a file.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';

journey('storage that is blocked is said at once, and export still works', async ({ screen }) => {
  await screen.page.addInitScript(() => {
    const refuse = () => { throw new DOMException('blocked by a journey', 'SecurityError'); };
    Object.defineProperty(window, 'localStorage', { get: refuse });
    Object.defineProperty(window, 'indexedDB', { get: refuse });
  });
  await screen.open('#demo');
  await screen.see('this browser keeps nothing for this page');
  await takenAway(screen);
});

journey('storage that is full is said at once, and export still works', async ({ screen }) => {
  await screen.page.addInitScript(() => {
    const refuse = () => { throw new DOMException('full, says a journey', 'QuotaExceededError'); };
    Storage.prototype.setItem = refuse;
    IDBObjectStore.prototype.put = refuse;
  });
  await screen.open('#demo');
  await screen.see('storage is full');
  await takenAway(screen);
});

journey('a project that no longer fits stays on the screen, and what was kept before stays kept', async ({ screen }) => {
  await screen.open('#demo');
  await screen.saved();
  await screen.page.evaluate(() => {
    const refuse = () => { throw new DOMException('full, says a journey', 'QuotaExceededError'); };
    Storage.prototype.setItem = refuse;
    IDBObjectStore.prototype.put = refuse;
  });
  await rename(screen, 'Too much');
  await screen.see('storage is full');
  assert.equal(await screen.value('Name'), 'Too much');
  await screen.reload();
  await screen.page.evaluate(() => { location.hash = '#projects'; });
  assert.equal(await screen.value('Name'), 'Salt and thread');
});

journey('at the first save the browser is asked to keep what is here, and a refusal is said once', async ({ screen }) => {
  await screen.page.addInitScript(() => {
    window.asked = 0;
    StorageManager.prototype.persist = async () => { window.asked += 1; return false; };
  });
  await screen.open();
  assert.equal(await screen.page.evaluate(() => window.asked), 0, 'not before there is something to keep');
  await screen.tap('Look at the demo');
  await screen.saved();
  await screen.see(/may delete it after a week without a visit: send yourself a copy/);
  assert.equal(await screen.page.evaluate(() => window.asked), 1);
  await screen.reload();
  await rename(screen, 'Once more');
  await screen.saved();
  await screen.page.waitForFunction(() => window.asked === 1);
  await screen.unseen(/may delete it after a week without a visit/);
});

async function rename(screen, title) {
  await screen.page.evaluate(() => { location.hash = '#projects'; });
  await screen.type('Name', title);
  await screen.keys('Tab');
}

/** An edit holds on the screen, and the exported file has it. */
async function takenAway(screen) {
  await rename(screen, 'Kept nowhere');
  const file = await screen.download(() => screen.tap('Export'));
  assert.equal(JSON.parse(file.text).title, 'Kept nowhere');
}
