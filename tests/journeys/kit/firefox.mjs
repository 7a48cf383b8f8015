// Debian's Firefox, driven over WebDriver BiDi by puppeteer-core.

import { existsSync } from 'node:fs';
import puppeteer from 'puppeteer-core';
import { KEY } from './plain.mjs';

const PLACES = [process.env.FIREFOX, '/usr/bin/firefox-esr', '/usr/bin/firefox'];

export async function startFirefox() {
  const executablePath = PLACES.find((place) => place && existsSync(place));
  if (!executablePath) throw new Error('Firefox is missing: ./dev test installs it, or name it in FIREFOX');
  const extraPrefsFirefox = { 'datareporting.policy.dataSubmissionEnabled': false, 'app.update.enabled': false };
  const browser = await puppeteer.launch({ browser: 'firefox', executablePath, headless: true, extraPrefsFirefox });
  const page = await browser.newPage();
  await page.setViewport({ width: 390, height: 844 });
  return {
    goto: (address) => page.goto(address),
    run: (work, ...inputs) => page.evaluate(work, ...inputs),
    pick: async (work, ...inputs) => (await page.evaluateHandle(work, ...inputs)).asElement(),
    click: (element) => element.click(),
    keys: (element, text) => press(page, element, text),
    end: () => browser.close(),
  };
}

async function press(page, element, text) {
  await element.focus();
  const keyOf = new Map(Object.entries(KEY).map(([name, code]) => [code, name]));
  for (const letter of text) await (keyOf.has(letter) ? page.keyboard.press(keyOf.get(letter)) : page.keyboard.sendCharacter(letter));
}
