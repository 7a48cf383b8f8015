// Starts the app, and is what is left when the app cannot start or stops.
//
// Runs as a module from this origin; `index.html` allows nothing else. It loads the compiled app, looks after
// the service worker, and gives the app one small object, `window.slantlight` (see DEVELOPERS.md):
//
//   build          name of this build, "development" under `./dev serve`
//   arrived()      takes the cover away; called by the app when its first page stands
//   settled()      the worker may begin; called by the app when its second part has come
//   failed(text)   shows the failure page; called by the app's panic hook, and when a part it cannot begin without is missing
//   received       text that another app shared to us, or text or a file that was given to the first screen, or null; the
//                  app takes it and sets it to null; `slantlight-received` is sent to `window` when something comes
//   updateWaiting  whether a newer build is ready; `slantlight-update` is sent to `window` when it turns true
//   watchClock()   looks at the clock for the app (`clock.js`)
//   update()       swaps to the newer build and reloads this tab, no other
//
// It holds no screen of the app and no formula.

import { watchClock } from './clock.js';
import { openDoorstep } from './doorstep.js';
import { showFailure } from './failure.js';

const tag = document.querySelector('script[data-wasm]');
const build = document.querySelector('meta[name=build]').content;
const bridge = { build, arrived, settled: () => {}, failed, received: takeReceived(), updateWaiting: false, update: () => {}, watchClock };
window.slantlight = bridge;

window.addEventListener('error', ({ error, message }) => {
  // An event without an error is a browser's remark (a resize loop, say), not a fault of ours.
  if (error) failed(describe(error, message));
});
window.addEventListener('unhandledrejection', ({ reason }) => {
  showFailure({ kind: 'promise', build, detail: describe(reason, 'unknown reason') });
});

// The worker's copies are those the page has fetched: it begins after the app's last part, so that none is fetched twice.
const partsAreSettled = new Promise((settled) => { bridge.settled = settled; });
const isFirstVisit = document.documentElement.classList.contains('first-visit');
wakeDatabase();
const appIsThere = isFirstVisit ? openDoorstep(give) : (uncover) => uncover();
if (await start()) await partsAreSettled;
if ('serviceWorker' in navigator) afterLoad(() => keepOffline().catch(() => {}));

/** Whether the app runs. */
async function start() {
  if (typeof WebAssembly !== 'object') {
    showFailure({ kind: 'engine', build, detail: 'WebAssembly is missing' });
    return false;
  }
  let glue;
  try {
    glue = await import(new URL(tag.dataset.glue, document.baseURI).href);
  } catch (error) {
    showFailure({ kind: 'load', build, detail: describe(error, 'the glue did not load') });
    return false;
  }
  try {
    await glue.default({ module_or_path: new URL(tag.dataset.wasm, document.baseURI) });
  } catch (error) {
    // A trap while starting is a panic of ours; anything else is the file or the engine.
    const kind = error instanceof WebAssembly.RuntimeError ? 'panic' : 'load';
    showFailure({ kind, build, detail: describe(error, 'the app did not compile') });
    return false;
  }
  return true;
}

/** The browser's database takes a moment to wake: it does so while the app is still on its way. */
function wakeDatabase() {
  try {
    indexedDB.databases?.().catch(() => {});
  } catch {
    // It is missing or blocked: the app finds that out as well, and says so.
  }
}

function arrived() {
  appIsThere(() => document.getElementById('cover')?.remove());
}

function give(received) {
  bridge.received = received;
  window.dispatchEvent(new Event('slantlight-received'));
}

function failed(detail, kind = 'panic') {
  bridge.settled();
  showFailure({ kind, build, detail });
}

function describe(error, otherwise) {
  return String(error?.stack || error?.message || error || otherwise);
}

/** What a share target or a link left in the query; it leaves the address at once, so a reload does not repeat it. */
function takeReceived() {
  const query = new URLSearchParams(location.search);
  const parts = ['title', 'text', 'url'].map((name) => query.get(name)).filter(Boolean);
  if (parts.length === 0) return null;
  history.replaceState(null, '', location.pathname + location.hash);
  return parts.join('\n');
}

function afterLoad(work) {
  if (document.readyState === 'complete') work();
  else window.addEventListener('load', work, { once: true });
}

/** One worker keeps the files of one build. Under `./dev serve` there is none, or edits would never show. */
async function keepOffline() {
  if (build === 'development') {
    for (const old of await navigator.serviceWorker.getRegistrations()) await old.unregister();
    return;
  }
  const registration = await navigator.serviceWorker.register('./sw.js', { updateViaCache: 'none' });
  bridge.update = () => swap(registration);
  if (registration.waiting && navigator.serviceWorker.controller) offerUpdate();
  registration.addEventListener('updatefound', () => {
    const arriving = registration.installing;
    arriving?.addEventListener('statechange', () => {
      // Without a controller this is the very first install: nothing to update.
      if (arriving.state === 'installed' && navigator.serviceWorker.controller) offerUpdate();
    });
  });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') registration.update().catch(() => {});
  });
}

function offerUpdate() {
  bridge.updateWaiting = true;
  window.dispatchEvent(new Event('slantlight-update'));
}

/** Only the tab that asked reloads; the others go on with what they have loaded. */
function swap(registration) {
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  registration.waiting?.postMessage('swap');
}
