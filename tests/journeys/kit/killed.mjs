// A browser that can be killed: its own process group, its own profile folder, driven over its debugging port.

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { SWITCHES, chromiumPath } from './browser.mjs';

export class Mortal {
  constructor() {
    this.profile = mkdtempSync(path.join(tmpdir(), 'slantlight-'));
  }

  /** Starts it on its profile and gives a page. */
  async start() {
    const switches = [...SWITCHES, '--headless', `--user-data-dir=${this.profile}`, '--remote-debugging-port=0'];
    this.process = spawn(chromiumPath(), switches, { detached: true, stdio: ['ignore', 'ignore', 'pipe'] });
    const address = await new Promise((resolve, reject) => {
      let said = '';
      this.process.stderr.on('data', (chunk) => {
        said += chunk;
        const found = said.match(/listening on (ws:\S+)/);
        if (found) resolve(found[1]);
      });
      this.process.on('exit', () => reject(new Error(`the browser ended: ${said.slice(-300)}`)));
    });
    // A busy machine takes its time to answer; a browser that is dead has ended above.
    this.browser = await chromium.connectOverCDP(address, { timeout: 120_000 });
    const [context] = this.browser.contexts();
    return context.newPage();
  }

  /** Takes its power away: the whole process group, at once. */
  async kill() {
    const gone = new Promise((resolve) => this.process.on('exit', resolve));
    process.kill(-this.process.pid, 'SIGKILL');
    await gone;
    await this.browser.close().catch(() => {});
  }

  forget() {
    rmSync(this.profile, { recursive: true, force: true });
  }
}
