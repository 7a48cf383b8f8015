// Who can reach what: every screen by the rules of axe-core (WCAG 2.2, A and AA), empty and with the demo, light and
// dark, and with the text at twice its size.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { journey } from '../kit/journey.mjs';
import { PHONE } from '../kit/screen.mjs';
import { BARE, OF_THE_DEMO } from '../kit/screens.mjs';

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
// A March afternoon with the sun up in the demo's places.
const MOMENT = '2027-03-11T16:20:00Z';
const FULL = [...BARE, ...OF_THE_DEMO];

for (const colorScheme of ['light', 'dark']) {
  journey(`nothing bars the way on an empty phone, ${colorScheme}`, async ({ fresh }) => {
    await walk(await fresh(PHONE, { colorScheme }), '', BARE);
  });
  journey(`nothing bars the way with the demo, ${colorScheme}`, async ({ fresh }) => {
    await walk(await fresh(PHONE, { colorScheme }), '#demo', FULL);
  });
  journey(`nothing bars the way with text at 200 %, ${colorScheme}`, async ({ fresh }) => {
    const screen = await fresh(PHONE, { colorScheme });
    await screen.page.addInitScript(() => {
      addEventListener('DOMContentLoaded', () => { document.documentElement.style.fontSize = '200%'; });
    });
    await walk(screen, '#demo', FULL);
  });
}

journey('where colours are forced, bars and legends still show what they say', async ({ screen }) => {
  await screen.page.emulateMedia({ forcedColors: 'active' });
  await screen.open('#demo');
  await screen.tap('Stops', 'link');
  await screen.page.locator('.level-bar').first().waitFor();
  const [empty, full] = await painted(screen, '.level-bar', '.level-bar > span');
  assert.notEqual(empty, full);
  await screen.tap('Scenes', 'link');
  await screen.tap(/4 · Mending the sail/, 'link');
  await screen.tap('The whole year', 'link');
  await screen.page.locator('.legend').waitFor();
  const legend = await painted(screen, '.legend > .met', '.legend > .up', '.legend > .down');
  assert.equal(new Set(legend).size, 3, legend.join(' '));
});

/** Every screen of the list, from the app opened at `first`; all findings are told at once. */
async function walk(screen, first, screens) {
  const { page } = screen;
  await screen.at(MOMENT);
  await screen.open(first);
  await page.evaluate(AXE);
  const found = [];
  let looked = 0;
  for (const [name, fragment] of screens) {
    await page.evaluate((there) => { location.hash = there; }, fragment);
    await page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => setTimeout(done, 300)); }));
    const { violations } = await page.evaluate((values) => window.axe.run({ runOnly: { type: 'tag', values } }), RULES);
    for (const { id, nodes } of violations) {
      found.push(`${name}: ${id}: ${nodes.slice(0, 3).map((node) => node.html.slice(0, 160)).join(' | ')}`);
    }
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    if (wide > 0) found.push(`${name}: ${wide} px wider than the screen`);
    looked += 1;
  }
  assert.deepEqual(found, []);
  assert.equal(looked, screens.length);
}

/** The colour behind the first of each; behind its mark, where it has one. */
function painted({ page }, ...selectors) {
  return page.evaluate((all) => all.map((selector) => {
    const found = document.querySelector(selector);
    const mark = getComputedStyle(found, '::before');
    return (mark.content === 'none' ? getComputedStyle(found) : mark).backgroundColor;
  }), selectors);
}
