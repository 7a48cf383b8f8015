// The runner: `journey('name', async ({ screen, server, fresh }) => …)` declares, `runAll` runs and counts.
//
// Every journey has a server and a fresh profile of its own; two run at a time, since most of a journey is waiting.
// One that failed so is run once more, alone, after all the others: that tells the app's fault from a crowded machine's.
// Its first failure stays in the print; where more than `SECOND_TRIES` fail, all of them count.

import { Server } from './server.mjs';
import { PHONE, Screen } from './screen.mjs';

const declared = [];
const AT_ONCE = 2;
const LIMIT_MS = Number(process.env.LIMIT_MS ?? 180_000);
const SECOND_TRIES = 1;

export function journey(name, work) {
  declared.push({ name, work });
}

/** Runs every journey whose name contains `filter`; gives the number of failures. */
export async function runAll(browser, folder, filter = '') {
  const waiting = declared.filter(({ name }) => name.includes(filter));
  const total = waiting.length;
  const failed = [];
  const lane = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      if (!(await runOne(browser, folder, next))) failed.push(next);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, lane));
  let lost = failed.length;
  if (failed.length <= SECOND_TRIES) {
    for (const again of failed) {
      console.log(`once more, alone: ${again.name}`);
      if (await runOne(browser, folder, again)) lost--;
    }
  }
  const second = failed.length - lost;
  console.log(`${total - lost} passed${second > 0 ? `, ${second} of them at the second try` : ''}, ${lost} failed`);
  return total === 0 ? 1 : lost;
}

async function runOne(browser, folder, { name, work }) {
  const began = Date.now();
  const server = await new Server(folder).start();
  const screens = [];
  const fresh = async (device = PHONE, options = {}) => {
    screens.push(await Screen.fresh(browser, server, device, options));
    return screens.at(-1);
  };
  let fault = null;
  try {
    const screen = await fresh();
    await Promise.race([work({ screen, server, fresh }), tooLong()]);
    for (const each of screens) await each.close();
  } catch (error) {
    fault = error;
    await screens[0]?.picture(`failed-${name.replace(/\W+/g, '-')}`).catch(() => {});
    for (const each of screens) each.faults.forEach((line) => console.log(`      ${line}`));
  }
  for (const each of screens) await each.context.close();
  await server.stop();
  console.log(`${fault ? 'FAILED' : 'passed'} ${((Date.now() - began) / 1000).toFixed(1)} s  ${name}`);
  if (fault) console.log(fault.stack ?? fault);
  return fault === null;
}

function tooLong() {
  return new Promise((_, reject) => {
    setTimeout(() => reject(new Error(`took longer than ${LIMIT_MS / 1000} s`)), LIMIT_MS).unref();
  });
}
