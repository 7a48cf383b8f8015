// Debian's WebKitGTK: its small browser on a screen that nobody sees, driven by a plain WebDriver client.

import { spawn } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { createServer } from 'node:net';
import path from 'node:path';

const DRIVER = '/usr/bin/WebKitWebDriver';
const LIBRARIES = '/usr/lib';
/** What WebDriver calls the reference to an element. */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';

export async function startWebKit() {
  const browser = smallBrowser();
  if (!existsSync(DRIVER) || !browser) throw new Error('WebKitGTK is missing: ./dev test installs it');
  const port = await freePort();
  const screen = ['-a', '-s', '-screen 0 390x844x24', DRIVER, `--port=${port}`];
  const driver = spawn('xvfb-run', screen, { detached: true, stdio: 'ignore' });
  const address = `http://127.0.0.1:${port}/session`;
  const options = { binary: browser, args: ['--automation', '--full-screen'] };
  const { sessionId } = await started(() => ask('POST', address, { capabilities: { alwaysMatch: { 'webkitgtk:browserOptions': options } } }));
  const session = `${address}/${sessionId}`;
  const run = (work, ...inputs) => ask('POST', `${session}/execute/sync`, { script: `return (${work}).apply(null, arguments)`, args: inputs });
  return {
    goto: (url) => ask('POST', `${session}/url`, { url }),
    run,
    pick: run,
    click: (element) => ask('POST', `${session}/element/${element[ELEMENT]}/click`, {}),
    keys: (element, text) => ask('POST', `${session}/element/${element[ELEMENT]}/value`, { text }),
    end: async () => {
      await ask('DELETE', session).catch(() => {});
      process.kill(-driver.pid);
    },
  };
}

/** The browser lies in the folder of its library, which is named by machine and version. */
function smallBrowser() {
  const inside = (folder) => readdirSync(folder, { withFileTypes: true }).filter((one) => one.isDirectory()).map((one) => path.join(folder, one.name));
  const libraries = inside(LIBRARIES).flatMap(inside).filter((folder) => path.basename(folder).startsWith('webkit2gtk-4'));
  return libraries.map((folder) => path.join(folder, 'MiniBrowser')).filter((file) => existsSync(file)).sort().at(-1);
}

async function ask(method, address, body) {
  const response = await fetch(address, { method, body: body && JSON.stringify(body), headers: { 'Content-Type': 'application/json' } });
  const { value } = await response.json();
  if (!response.ok) throw new Error(`${value.error}: ${value.message}`);
  return value;
}

/** The driver needs a moment until it listens. */
async function started(work, attempts = 100) {
  try {
    return await work();
  } catch (error) {
    if (attempts === 0) throw error;
    await new Promise((later) => setTimeout(later, 200));
    return started(work, attempts - 1);
  }
}

function freePort() {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}
