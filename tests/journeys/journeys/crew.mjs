// The crew: a shot list comes in, somebody else scouts, and a plan goes out that needs no app.

import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import { journey } from '../kit/journey.mjs';
import { pages } from '../kit/pdf.mjs';
import { DESK, OUT } from '../kit/screen.mjs';

const LIST = `Scene;INT/EXT;Day/Night;Place;Minutes;Light;Props
31;INT;DAY;Sail loft;25;low sun, no fill;"needle; thread"
31;INT;DAY;Sail loft;12,5;;
32;EXT;DUSK;Old mill;1:30;blue;boat`;

journey('a shot list is shown, taken in as one step, and undone', async ({ screen }) => {
  await screen.open('#demo');
  await screen.see('Mending');
  await screen.open('#shot-list');
  await screen.type(/Paste the list/, LIST);
  await screen.tap('Read the list');
  await screen.see('3 set-ups in 2 new scenes. 2 rows have a question');
  await screen.see('“12,5” becomes 13 min.');
  await screen.see('No place of this project is called “Old mill”');
  await screen.see('“1:30” is no number of minutes');
  await screen.choose(/Column 6/, 'left out');
  await screen.tap('Take it in');
  await screen.see('3 set-ups taken in');
  await screen.see('31 · Scene 31');
  await screen.tap('Undo');
  await screen.unseen('31 · Scene 31');
});

journey('a list that is none says what to do', async ({ screen }) => {
  await screen.open('#shot-list');
  await screen.tap('Read the list');
  await screen.see('There is nothing to read yet');
});

journey('a set-up is copied in one tap and lit like another', async ({ screen }) => {
  await screen.open('#demo');
  await screen.tap(/Mending/, 'link');
  await screen.tap('Copy this set-up');
  await screen.page.waitForFunction(() => location.hash.startsWith('#set-up/'));
  const bearing = () => screen.control('Lens bearing', 'slider').getAttribute('aria-valuetext');
  const before = await bearing();
  await screen.choose('Light and lens as in', /ferry|slip|door/i);
  for (let tries = 0; tries < 40 && (await bearing()) === before; tries++) await screen.page.waitForTimeout(100);
  assert.notEqual(await bearing(), before, 'the lens looks where the other set-up looks');
});

journey('somebody without the project answers five questions', async ({ screen, server }) => {
  await screen.standAt(40.6449, -8.6642);
  await screen.open('#demo');
  await screen.see('Mending');
  const other = await screen.secondTab();
  await other.page.addInitScript(() => {
    navigator.share = async ({ text }) => void (window.shared = text);
  });
  await other.page.goto(`${server.address}#recce/salt-pans/Salt%20pans`);
  await other.started();
  await other.tap('Use where I am');
  await other.see('40.6449 N 8.6642 W');
  await other.type(/What do you hear/, 'planes at noon');
  await other.tap('Send the answer');
  await other.page.waitForFunction(() => window.shared);
  const answer = await other.page.evaluate(() => window.shared);
  assert.match(answer, /^Recce for Salt pans \[salt-pans\]\nPosition: geo:40\.6449,-8\.6642/);
  await screen.open('#location/salt-pans');
  await screen.page.getByText('Somebody has answered').tap();
  await screen.type('Paste the message here', `hi!\n${answer}`);
  await screen.tap('Put it into the sheet');
  await screen.see('The answer is in the scout sheet');
  await screen.page.getByText('What is known, and what to ask').tap();
  assert.equal(await screen.value(/^Noise/), 'planes at noon');
});

journey('a plan goes out as a picture that needs no app, without a network, on one page, and as a file to edit', async ({ screen, server }) => {
  await screen.open('#demo');
  await screen.keptOffline();
  await screen.reload();
  await server.stop();
  await screen.offline();
  await screen.tap(/Mending/, 'link');
  await screen.control(/^Save: /).tap();
  await screen.tap('Lighting plan for the crew');
  await screen.see('camera');
  const picture = await screen.page.locator('.plan-paper svg').getAttribute('aria-label');
  assert.match(picture, /mm towards/);
  assert.match(picture, /key (left|right), [\d.]+ : 1|both sides/);
  assert.match(picture, /key T[\d.]+, ISO \d+, .*ND/);
  const button = screen.control('To the crew');
  await button.waitFor();
  await screen.page.waitForFunction(() => !document.querySelector('.unprinted button').disabled);
  const waited = screen.page.waitForEvent('download');
  await button.tap();
  const download = await waited;
  assert.match(download.suggestedFilename(), /plan\.png$/);
  const { size } = await (await import('node:fs/promises')).stat(await download.path());
  assert.ok(size > 5_000 && size <= 500_000, `${size} bytes`);
  mkdirSync(OUT, { recursive: true });
  await download.saveAs(`${OUT}/plan.png`);

  for (const format of ['A4', 'Letter']) {
    const pdf = await screen.page.pdf({ format });
    writeFileSync(`${OUT}/plan-${format}.pdf`, pdf);
    const printed = pages(pdf);
    assert.equal(printed.length, 1, format);
    assert.ok(printed[0].text.replace(/\s+/g, '').includes('ISO'), printed[0].text);
  }
  const { text } = await screen.download(() => screen.tap('Project file'));
  assert.equal(JSON.parse(text).format, 'slantlight-project');
});

journey('what is pasted anywhere is looked at', async ({ screen }) => {
  await screen.open('#demo');
  await screen.see('Mending');
  await screen.paste('see you at five');
  await screen.see('no project, no place, no shot list');
  await screen.paste('Recce for Salt pans [salt-pans]\nNoise: planes at noon');
  await screen.see('The answer is in the scout sheet of Salt pans');
  await screen.paste('40.6405, -8.6538');
  await screen.tap('Add this place');
  await screen.see('40.6405 N 8.6538 W');
  await screen.paste('41 INT. SAIL LOFT - DAY - 25 min\n42 EXT. SALT PANS - DUSK - 30 min');
  await screen.see('2 set-ups in 2 new scenes');
});

journey('lamps of a plan have level, stop, colour and what they draw', async ({ screen }) => {
  await screen.open('#demo');
  await screen.tap(/Mending/, 'link');
  await screen.control(/^Save: /).tap();
  await screen.open('#stops');
  // The demo has a tube of its own: the new one is the one after it.
  const tubes = screen.page.locator('.levels-kit details', { hasText: 'Tube, 1.2 m' });
  const before = await tubes.count();
  await screen.choose(/Add a generic example/, 'Tube, 1.2 m');
  await tubes.nth(before).locator('summary').tap();
  assert.equal(await screen.value(/^Draws/), '20');
  await screen.tap('Bring it here');
  await screen.saved();
  await screen.open('#lighting-plan/set-up-4a');
  await screen.see(/100 %, T.* alone, 4,300 K$/);
  const picture = await screen.page.locator('.plan-paper svg').getAttribute('aria-label');
  assert.match(picture, /lamps draw 20 W undimmed/);
});

journey('on a desk two places, or the plans of two slots, stand side by side', async ({ fresh }) => {
  const desk = await fresh(DESK);
  await desk.open('#demo');
  await desk.see('Mending');
  await desk.open('#location/sail-loft');
  await desk.choose(/^Another place beside/, 'Salt pans');
  await desk.page.locator('section[aria-label="Beside"] h2', { hasText: 'Salt pans' }).waitFor();
  const own = await desk.page.locator('main h1').boundingBox();
  const other = await desk.page.locator('section[aria-label="Beside"] h2').first().boundingBox();
  assert.ok(other.x > own.x + 300 && Math.abs(other.y - own.y) < 200, JSON.stringify([own, other]));
  await desk.open('#set-up/set-up-4a');
  await desk.control(/^Save: /).click();
  await desk.page.getByRole('button', { name: /^Save: /, pressed: false }).first().click();
  await desk.open('#lighting-plan/set-up-4a');
  const plans = desk.page.locator('.plan-paper svg');
  await plans.nth(1).waitFor();
  const [first, second] = [await plans.nth(0).getAttribute('aria-label'), await plans.nth(1).getAttribute('aria-label')];
  assert.notEqual(first, second, 'two slots');
});
