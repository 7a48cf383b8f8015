// The power goes: the browser is killed up to two seconds after an edit was called saved. Nothing acknowledged is lost,
// and the record on the disk is whole. KILLS sets how often; five in the tests, a hundred in ./dev bench.

import assert from 'node:assert/strict';
import { crc32 } from 'node:zlib';
import { journey } from '../kit/journey.mjs';
import { Mortal } from '../kit/killed.mjs';

const KILLS = Number(process.env.KILLS ?? 5);

journey('no acknowledged edit is lost when the browser is killed', async ({ server }) => {
  const mortal = new Mortal();
  try {
    let page = await opened(mortal, `${server.address}#demo`);
    await page.getByText('Mending the sail').first().waitFor();
    for (let kill = 1; kill <= KILLS; kill++) {
      const note = `kept ${kill}`;
      await page.goto(`${server.address}#location/sail-loft`);
      await page.getByLabel(/What the crew must know/).fill(note);
      // The mark says Saving from the next frame on, until the strict write is through.
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
      await page.locator('.kept', { hasText: /^Saved$/ }).waitFor();
      await new Promise((later) => setTimeout(later, Math.random() * 2000));
      await mortal.kill();
      page = await opened(mortal, `${server.address}#location/sail-loft`);
      assert.equal(await page.getByLabel(/What the crew must know/).inputValue(), note, `after kill ${kill}`);
      const { checksum, body } = JSON.parse(await page.evaluate(durable));
      assert.equal(checksum, crc32(body).toString(16).padStart(8, '0'), `the checksum after kill ${kill}`);
      assert.equal(JSON.parse(body).locations.find(({ id }) => id === 'sail-loft').notes, note);
      if (kill % 20 === 0) console.log(`      ${kill} kills so far`);
    }
    console.log(`      ${KILLS} kills, nothing lost, every checksum right`);
  } finally {
    await mortal.kill();
    mortal.forget();
  }
});

async function opened(mortal, address) {
  const page = await mortal.start();
  await page.goto(address);
  await page.waitForSelector('#cover', { state: 'detached' });
  return page;
}

/** The demo's record as it lies in IndexedDB. */
function durable() {
  return new Promise((done, failed) => {
    const opening = indexedDB.open('slantlight');
    opening.onerror = failed;
    opening.onsuccess = () => {
      const found = opening.result.transaction('records').objectStore('records').get('slantlight-project-salt-and-thread');
      found.onsuccess = () => done(found.result);
      found.onerror = failed;
    };
  });
}
