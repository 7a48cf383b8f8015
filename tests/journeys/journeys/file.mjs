// The file: two tabs, a project that comes back changed, earlier versions, links, a full or blocked storage, files of
// the future, another storage. Nothing is lost, nothing is overwritten unasked.

import assert from 'node:assert/strict';
import { crc32 } from 'node:zlib';
import { DESK, PHONE } from '../kit/screen.mjs';
import { journey } from '../kit/journey.mjs';

const NOTES = /What the crew must know/;

async function go(screen, fragment) {
  await screen.page.evaluate((to) => { location.hash = to; }, fragment);
}

async function note(screen, text) {
  await go(screen, '#location/sail-loft');
  await screen.type(NOTES, text);
  await screen.saved();
}

async function exported(screen) {
  await go(screen, '#projects');
  return (await screen.download(() => screen.tap('Export'))).text;
}

function checksum(body) {
  return crc32(body).toString(16).padStart(8, '0');
}

async function open(screen, text) {
  await go(screen, '#projects');
  await screen.pick(() => screen.tap('Open a project file'), 'came.json', text);
}

journey('of two tabs one writes, the other follows, and the pen can be taken', async ({ screen }) => {
  await screen.open('#demo');
  await note(screen, 'from the first');
  const other = await screen.secondTab();
  await other.open('#location/sail-loft');
  await other.see(/open in another tab/);
  assert.equal(await other.value(NOTES), 'from the first');
  await note(screen, 'a second thought');
  await other.page.waitForFunction(() => [...document.querySelectorAll('textarea')].some((area) => area.value === 'a second thought'));
  await other.type(NOTES, 'not here');
  await other.see(/changes are made there/);
  await other.tap('Write here');
  await note(other, 'from the second');
  await screen.see(/open in another tab/);
  await screen.page.waitForFunction(() => [...document.querySelectorAll('textarea')].some((area) => area.value === 'from the second'));
  await screen.page.close();
  await other.reload();
  assert.equal(await other.value(NOTES), 'from the second');
});

journey('without locks two tabs that both write lose nothing', async ({ screen }) => {
  await screen.context.addInitScript(() => Object.defineProperty(Navigator.prototype, 'locks', { value: undefined }));
  await screen.open('#demo');
  await note(screen, 'both know this');
  const other = await screen.secondTab();
  await other.open('#location/sail-loft');
  await note(screen, 'from the first');
  await go(other, '#location/salt-pans');
  await other.type(NOTES, 'from the second');
  await other.saved();
  await screen.page.waitForTimeout(300);
  const kept = JSON.parse(await exported(other));
  const said = Object.fromEntries(kept.locations.map(({ id, notes }) => [id, notes]));
  assert.equal(said['sail-loft'], 'from the first');
  assert.equal(said['salt-pans'], 'from the second');
});

journey('a project that comes back changed is laid side by side', async ({ screen }) => {
  await screen.open('#demo');
  await note(screen, 'before it was sent');
  const came = JSON.parse(await exported(screen));
  await note(screen, 'changed here');
  came.locations.find(({ id }) => id === 'salt-pans').notes = 'changed there';
  came.scenes[0].set_ups[0].minutes = 41;
  came.cameras.push({ ...came.cameras[0], id: 'camera-b', name: 'Camera B' });
  await open(screen, JSON.stringify(came));
  await screen.see(/things differ/);
  await screen.see('changed there');
  await screen.see('Camera Camera B');
  await screen.tap('Put the two together');
  await screen.saved();
  const joined = JSON.parse(await exported(screen));
  const said = Object.fromEntries(joined.locations.map(({ id, notes }) => [id, notes]));
  assert.equal(said['sail-loft'], 'changed here', 'what was changed here alone stays');
  assert.equal(said['salt-pans'], 'changed there', 'what was changed there alone is taken');
  assert.equal(joined.scenes[0].set_ups[0].minutes, 41);
  assert.equal(joined.cameras.length, came.cameras.length);
  await screen.tap(/^Undo: put two versions together/);
  await screen.saved();
  assert.equal(JSON.parse(await exported(screen)).cameras.length, came.cameras.length - 1, 'one step back');
});

journey('an earlier version can be brought back, and that be undone', async ({ screen }) => {
  await screen.at('2027-03-01T12:00:00Z');
  await screen.open('#demo');
  await note(screen, 'of Monday');
  await screen.at('2027-03-02T09:00:00Z');
  await screen.reload();
  await note(screen, 'of Tuesday');
  await go(screen, '#projects');
  await screen.page.getByText('Earlier versions').tap();
  await screen.tap(/^Bring back/);
  await screen.see('The earlier version is back.');
  await go(screen, '#location/sail-loft');
  await screen.page.waitForFunction(() => [...document.querySelectorAll('textarea')].some((area) => area.value === 'of Monday'));
  await screen.tap(/^Undo: bring back/);
  await screen.page.waitForFunction(() => [...document.querySelectorAll('textarea')].some((area) => area.value === 'of Tuesday'));
});

journey('a project goes by link, is seen before it is taken in, and leaves the address', async ({ screen, fresh }) => {
  await screen.open('#demo');
  await go(screen, '#projects');
  await screen.tap('As a link');
  const address = await screen.value('Link');
  console.log(`      the demo's link has ${address.length} letters`);
  await screen.tap('Close');
  const sent = await exported(screen);
  const receiver = await fresh(DESK);
  await receiver.page.goto(address);
  await receiver.started();
  await receiver.see('Take this in?');
  await receiver.see('Salt and thread');
  assert.equal(new URL(receiver.page.url()).hash, '');
  await receiver.tap('Take it in');
  await receiver.saved();
  assert.equal(await exported(receiver), sent, 'the same bytes');
  await receiver.page.evaluate((to) => { location.hash = to; }, new URL(address).hash.slice(0, -20));
  await receiver.see(/did not arrive whole/);
});

journey('a full storage is said at once, and export still works', async ({ screen }) => {
  await screen.open('#demo');
  await note(screen, 'kept');
  await screen.page.evaluate(() => {
    const full = () => { throw new DOMException('full', 'QuotaExceededError'); };
    Storage.prototype.setItem = full;
    IDBObjectStore.prototype.put = full;
  });
  await go(screen, '#location/sail-loft');
  await screen.type(NOTES, 'not kept');
  await screen.see(/Not saved: this browser's storage is full/);
  assert.match(await exported(screen), /not kept/);
  await screen.reload();
  await go(screen, '#location/sail-loft');
  assert.equal(await screen.value(NOTES), 'kept', 'the last good copy is there');
});

journey('a blocked storage is said at once, and export still works', async ({ screen }) => {
  await screen.page.addInitScript(() => {
    const blocked = { get() { throw new DOMException('blocked', 'SecurityError'); } };
    Object.defineProperty(window, 'localStorage', blocked);
    Object.defineProperty(window, 'indexedDB', blocked);
  });
  await screen.open('#demo');
  await go(screen, '#location/sail-loft');
  await screen.type(NOTES, 'nowhere');
  await screen.see(/keeps nothing for this page/);
  assert.match(await exported(screen), /nowhere/);
});

journey('an altered record gives way to the whole one, and two altered ones stay where they lie', async ({ server, fresh }) => {
  const KEY = 'slantlight-project-salt-and-thread';
  // A page of the same origin without the app, which the worker would bring there.
  server.replaced.set('empty.html', '<!doctype html><link rel="icon" href="data:,">');
  const screen = await fresh(PHONE, { serviceWorkers: 'block' });
  const kept = () => screen.page.evaluate((key) => localStorage.getItem(key), KEY);
  await screen.open('#demo');
  await note(screen, 'on both shelves');
  const whole = await kept();
  const altered = whole.replace('on both shelves', 'on both shelvez');
  await screen.page.goto(`${server.address}empty.html`);
  await screen.page.evaluate(([key, text]) => localStorage.setItem(key, text), [KEY, altered]);
  await screen.open('#location/sail-loft');
  assert.equal(await screen.value(NOTES), 'on both shelves', 'the other shelf has it whole');

  await screen.page.goto(`${server.address}empty.html`);
  await screen.page.evaluate(([key, text]) => new Promise((done, failed) => {
    localStorage.setItem(key, text);
    const opening = indexedDB.open('slantlight');
    opening.onsuccess = () => {
      const writing = opening.result.transaction('records', 'readwrite');
      writing.objectStore('records').put(text.slice(0, -40), key);
      writing.oncomplete = () => { opening.result.close(); done(); };
      writing.onerror = failed;
    };
  }), [KEY, altered]);
  await screen.open('#projects');
  await screen.see(/This version cannot read \d kept records?\. Nothing there was touched/);
  assert.equal(await kept(), altered);
});

journey('what a newer version has written is shown or refused, never overwritten', async ({ screen }) => {
  await screen.open('#demo');
  await note(screen, 'of this version');
  const future = JSON.parse(await exported(screen));
  future.version = 9;
  await open(screen, JSON.stringify(future));
  await screen.see(/made by a newer version/);
  const body = JSON.stringify(future);
  const record = JSON.stringify({ revision: 99, written: '2027-03-01T12:00:00Z', checksum: checksum(body), body });
  await screen.page.evaluate((record) => localStorage.setItem('slantlight-project-salt-and-thread', record), record);
  await screen.reload();
  await go(screen, '#location/sail-loft');
  await screen.see(/newer version of Slantlight has changed this project/);
  await screen.type(NOTES, 'over it');
  await screen.see(/Let it in here too/);
  assert.equal(await screen.page.evaluate(() => localStorage.getItem('slantlight-project-salt-and-thread')), record);
});

journey('the app on the home screen, which keeps projects of its own, takes one over by file and by link', async ({ screen, fresh }) => {
  await screen.open();
  await screen.see(/keeps projects of its own: put it there before you begin/);
  await screen.open('#demo');
  const sent = await exported(screen);
  await screen.see(/send yourself a project, and open it there/);
  await screen.tap('As a link');
  const address = await screen.value('Link');

  const byFile = await fresh();
  await byFile.asApp();
  await byFile.open();
  await byFile.see(/Began in the browser\?/);
  await byFile.pick(() => byFile.tap('Open a project file'), 'salt.slantlight.json', sent);
  await byFile.tap('Take it in');
  await byFile.saved();
  assert.equal(await exported(byFile), sent, 'the same bytes');
  await byFile.unseen(/send yourself a project, and open/);

  // A link in a message opens the browser, not the app: there it is pasted.
  const byLink = await fresh();
  await byLink.asApp();
  await byLink.open('#projects');
  await byLink.tap('Paste from a message');
  await byLink.type('Text of the project', `Here it is: ${address}`);
  await byLink.tap('Look at it');
  await byLink.tap('Take it in');
  await byLink.saved();
  assert.equal(await exported(byLink), sent, 'the same bytes');
});
