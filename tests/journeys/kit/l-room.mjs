// The demo's loft made harder to draw: an L, with a roof light, glazing bars and an overhang, and a saved slot for its plan.

/** Leaves the screen on the room's page. */
export async function makeAnL(screen) {
  const go = (hash) => screen.page.evaluate((there) => { location.hash = there; }, hash);
  await go('#set-up/set-up-4a');
  await screen.see(/works on \d+ days? a year/);
  if (await screen.page.getByRole('button', { name: /^Save: / }).count() > 0) await screen.tap(/^Save: /, 'button');
  await go('#room/loft');
  await screen.see(/^Wall 1, seen from inside/);
  await screen.page.locator('summary', { hasText: 'Measure by pacing' }).click();
  await screen.type(/^Walls in order/, '8; 4; 3; -2.5; 5; 6.5');
  await screen.keys('Tab');
  await screen.tap('Take this floor', 'button');
  await screen.see(/^Taken\. /);
  await screen.tap('+ roof light', 'button');
  const window = screen.page.locator('details', { hasText: 'Loft window, left' }).first();
  await window.locator('summary').click();
  const measures = { 'Panes above each other': '3', 'Panes beside each other': '2', 'Overhang juts out': '0.8' };
  for (const [label, text] of Object.entries(measures)) {
    await window.getByLabel(label, { exact: true }).fill(text);
    await window.getByLabel(label, { exact: true }).press('Tab');
  }
  await screen.see(/6 panes/);
  await screen.saved();
}
