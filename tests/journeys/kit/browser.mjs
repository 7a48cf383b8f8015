// Starts Debian's Chromium, cut off from everything but this machine.

import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

const PLACES = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'];

export const SWITCHES = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];

/** Where Chromium is; a missing one is a failure, never a skipped journey. */
export function chromiumPath() {
  const found = PLACES.find((place) => place && existsSync(place));
  if (!found) throw new Error('Chromium is missing: ./dev test installs it, or name it in CHROMIUM');
  return found;
}

export async function startChromium() {
  return chromium.launch({ executablePath: chromiumPath(), args: SWITCHES });
}
