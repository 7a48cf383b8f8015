// A browser that can be killed: its own process group, its own profile folder, driven over its debugging port.

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { SWITCHES, chromiumPath } from './browser.mjs';

/**
 * No window of its own: whoever connects while a first tab is on its way to the new-tab page misses the word that it has
 * arrived, and waits for it for ever (about one start in thirty).
 */
const BARE = ['--headless', '--no-startup-window', '--remote-debugging-port=0'];

export class Mortal {
  constructor() {
    this.profile = mkdtempSync(path.join(tmpdir(), 'slantlight-'));
  }

  /** Starts it on its profile, and gives the address of its debugging port. */
  async launch() {
    const switches = [...SWITCHES, ...BARE, `--user-data-dir=${this.profile}`];
    this.process = spawn(chromiumPath(), switches, { detached: true, stdio: ['ignore', 'ignore', 'pipe'] });
    return new Promise((resolve, reject) => {
      let said = '';
      this.process.stderr.on('data', (chunk) => {
        said += chunk;
        const found = said.match(/listening on (ws:\S+)/);
        if (found) resolve(found[1]);
      });
      this.process.on('exit', () => reject(new Error(`the browser ended: ${said.slice(-300)}`)));
    });
  }

  /** Starts it and gives a page. */
  async start() {
    this.browser = await chromium.connectOverCDP(await this.launch());
    const [context] = this.browser.contexts();
    return context.newPage();
  }

  /** Takes its power away: the whole process group, at once. One that has ended by itself stays so. */
  async kill() {
    if (this.process.exitCode !== null || this.process.signalCode !== null) return;
    const gone = new Promise((resolve) => this.process.on('exit', resolve));
    process.kill(-this.process.pid, 'SIGKILL');
    await gone;
    await this.browser?.close().catch(() => {});
  }

  forget() {
    rmSync(this.profile, { recursive: true, force: true });
  }
}
