// The file: two tabs, a project that comes back changed, earlier versions, links, a full or blocked storage, files of
// the future, names that mean ill. Nothing is lost, nothing is overwritten unasked, nobody is let in.

import assert from 'node:assert/strict';
import { DESK } from '../kit/screen.mjs';
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

journey('what a newer version has written is shown or refused, never overwritten', async ({ screen }) => {
  await screen.open('#demo');
  await note(screen, 'of this version');
  const future = JSON.parse(await exported(screen));
  future.version = 9;
  await open(screen, JSON.stringify(future));
  await screen.see(/made by a newer version/);
  const record = await screen.page.evaluate(async (text) => {
    const crc = (bytes) => ~bytes.reduce((sum, byte) => {
      let bits = sum ^ byte;
      for (let turn = 0; turn < 8; turn++) bits = bits & 1 ? (bits >>> 1) ^ 0xedb88320 : bits >>> 1;
      return bits;
    }, -1) >>> 0;
    const checksum = crc(new TextEncoder().encode(text)).toString(16).padStart(8, '0');
    const record = JSON.stringify({ revision: 99, written: '2027-03-01T12:00:00Z', checksum, body: text });
    localStorage.setItem('slantlight-project-salt-and-thread', record);
    return record;
  }, JSON.stringify(future));
  await screen.reload();
  await go(screen, '#location/sail-loft');
  await screen.see(/newer version of Slantlight has changed this project/);
  await screen.type(NOTES, 'over it');
  await screen.see(/Let it in here too/);
  assert.equal(await screen.page.evaluate(() => localStorage.getItem('slantlight-project-salt-and-thread')), record);
});

journey('names that mean ill stay words', async ({ screen }) => {
  const evil = '<img src=x onerror="window.strangerRan=true">';
  await screen.open('#demo');
  const file = JSON.parse(await exported(screen));
  file.id = 'stranger';
  file.title = '../../x';
  file.locations[0].name = evil;
  file.locations[0].notes = 'javascript:alert(1) ' + 'é'.repeat(1 << 19);
  file.scenes[0].title = evil;
  file.scenes[1].title = 'x'.repeat(1 << 20);
  await open(screen, JSON.stringify(file));
  await screen.see('../../x');
  await screen.see(/very long/);
  await screen.tap('Take it in');
  await screen.see(evil);
  await go(screen, '#places');
  await screen.see(evil);
  await go(screen, '#location/sail-loft');
  assert.equal(await screen.page.evaluate(() => window.strangerRan), undefined);
  assert.equal(await screen.page.locator('a[href^="javascript:"], img[src=x]').count(), 0);
  await go(screen, '#projects');
  const { name } = await screen.download(() => screen.tap('Export'));
  assert.equal(name, 'x.slantlight.json');
});
