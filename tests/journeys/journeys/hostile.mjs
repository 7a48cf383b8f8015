// Files by people who mean ill: what they wrote stays words, on every screen and in every file that goes out.

import assert from 'node:assert/strict';
import { journey } from '../kit/journey.mjs';
import { BARE, OF_THE_DEMO } from '../kit/screens.mjs';

/** Members that hold people's own words. */
const WORDS = /^(name|title|notes|access|power|ground|sky|form|text|says|label)$/;
/** Ends an attribute, an element and a text, then brings an element of its own. */
const MARKUP = '"\'></p><img src=x onerror="window.strangerRan=true" data-stranger>';

async function go(screen, fragment) {
  await screen.page.evaluate((to) => { location.hash = to; }, fragment);
}

async function exported(screen) {
  await go(screen, '#projects');
  return JSON.parse((await screen.download(() => screen.tap('Export'))).text);
}

async function takeIn(screen, file) {
  await go(screen, '#projects');
  await screen.pick(() => screen.tap('Open a project file'), 'came.json', JSON.stringify(file));
  await screen.tap('Take it in');
  await screen.saved();
}

/** The same file with markup for every word somebody has typed. */
function spoilt(tree, member = '') {
  if (Array.isArray(tree)) return tree.map((one) => spoilt(one, member));
  if (typeof tree === 'string') return WORDS.test(member) ? MARKUP : tree;
  if (tree === null || typeof tree !== 'object') return tree;
  return Object.fromEntries(Object.entries(tree).map(([name, value]) => [name, spoilt(value, name)]));
}

journey('names that mean ill stay words', async ({ screen }) => {
  const evil = '<img src=x onerror="window.strangerRan=true">';
  await screen.open('#demo');
  const file = await exported(screen);
  file.id = 'stranger';
  file.title = '../../x';
  file.locations[0].name = evil;
  file.locations[0].notes = 'javascript:alert(1) ' + 'é'.repeat(1 << 19);
  file.scenes[0].title = evil;
  file.scenes[1].title = 'x'.repeat(1 << 20);
  await screen.pick(() => screen.tap('Open a project file'), 'came.json', JSON.stringify(file));
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

journey('markup in every word stays words on every screen, and in the sheets that go out', async ({ screen }) => {
  await screen.at('2027-03-05T10:00:00Z');
  await screen.open('#demo');
  await screen.see('Mending');
  await go(screen, '#days');
  await screen.tap('Suggest days by their light');
  await screen.control(/^Remove /).waitFor();
  await screen.tap('Plan the days');
  await screen.see(/No plan does|No plan holds|the best found/);
  await takeIn(screen, { ...spoilt(await exported(screen)), id: 'stranger' });
  let seen = 0;
  for (const [name, fragment] of [...BARE, ...OF_THE_DEMO]) {
    await go(screen, fragment);
    await screen.page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    const found = await screen.page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
      const let_in = document.querySelectorAll('[data-stranger], img[src="x"]').length;
      return { let_in, ran: window.strangerRan, words: document.querySelector('main').textContent.split('data-stranger').length - 1 };
    });
    assert.deepEqual([name, found.let_in, found.ran], [name, 0, undefined]);
    seen += found.words;
  }
  console.log(`      ${seen} times as words, on ${BARE.length + OF_THE_DEMO.length} screens`);
  assert.ok(seen > 100);
  await go(screen, '#days');
  const { name, text } = await screen.download(() => screen.tap('Page file'));
  assert.match(text, /<section class="day">/);
  assert.doesNotMatch(text, /<img/);
  assert.doesNotMatch(name, /[<>":/\\]/);
});
