// The words of a journey for any engine: everything is found by its accessible name, clicked and typed as a person would.
//
// A driver does five things: `goto(address)`, `run(function, ...arguments)` in the page, `pick(function, ...arguments)`
// which gives an element, `click(element)` and `keys(element, text)`. What is looked for runs in the page, so that all
// engines are asked the same.

const LIMIT_MS = 20_000;
const PAUSE_MS = 100;
/** Looks in a row at which a control stands where it stood, before it is clicked. */
const STILL = 5;

/** Names of keys as WebDriver writes them. */
export const KEY = { PageUp: '\uE00E', Tab: '\uE004' };

export class Plain {
  constructor(driver, server) {
    this.driver = driver;
    this.server = server;
  }

  async open(fragment = '') {
    await this.driver.goto(this.server.address + fragment);
    await this.started();
  }

  async reload() {
    await this.driver.run(() => { window.isOld = true; location.reload(); });
    await this.until(() => !window.isOld, 'the page anew');
    await this.started();
  }

  started() {
    return this.until(() => document.readyState === 'complete' && !document.querySelector('#cover'), 'the app');
  }

  async keptOffline() {
    await this.until(() => navigator.serviceWorker.getRegistration().then((found) => found?.active?.state === 'activated'), 'a worker');
  }

  /** Clicks it once it stands still: what is worked out for a year comes late above it, and pushes it away. */
  async tap(name) {
    let [place, still] = [null, 0];
    for (const end = Date.now() + LIMIT_MS; Date.now() < end; await pause()) {
      const control = await this.control(name);
      const now = await this.driver.run((element) => JSON.stringify(element.getBoundingClientRect()), control);
      still = now === place ? still + 1 : 0;
      if (still === STILL) return this.driver.click(control);
      place = now;
    }
    throw new Error(`${name} never stands still`);
  }

  async type(name, text) {
    const field = await this.control(name);
    await this.driver.run((element) => { element.value = ''; }, field);
    await this.driver.keys(field, text);
    await this.until((element, words) => element.value === words, `${text} in ${name}`, field, text);
    await this.driver.keys(field, KEY.Tab);
  }

  async keys(name, key, times) {
    await this.driver.keys(await this.control(name), key.repeat(times));
  }

  async choose(name, part) {
    await this.driver.run((select, words) => {
      select.value = [...select.options].find((option) => option.text.includes(words)).value;
      select.dispatchEvent(new Event('change', { bubbles: true }));
    }, await this.control(name), part);
  }

  /** Waits until the last change is on the disk; an edit is on its way there a frame later. */
  async saved() {
    await this.driver.run(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true)))));
    await this.until(() => document.querySelector('.kept')?.textContent.trim() === 'Saved', 'Saved, on the disk');
  }

  /** Does `work`, which offers a file for the downloads, and gives its text instead of letting it go there. */
  async given(work) {
    await this.driver.run(() => {
      const { createObjectURL } = URL;
      window.offered = null;
      URL.createObjectURL = (file) => { window.offered = file; return createObjectURL(file); };
      HTMLAnchorElement.prototype.click = () => {};
    });
    await work();
    await this.until(() => window.offered !== null, 'a file');
    return this.driver.run(() => window.offered.text());
  }

  /** Does `work`, which asks for a file, and gives it one with this text: no driver has a hand on the system's own window. */
  async opens(text, work) {
    await this.driver.run((body) => {
      HTMLInputElement.prototype.click = function click() {
        const carried = new DataTransfer();
        carried.items.add(new File([body], 'came.slantlight.json', { type: 'application/json' }));
        this.files = carried.files;
        this.dispatchEvent(new Event('change'));
      };
    }, text);
    await work();
  }

  /** Forgets all that the browser keeps, from a page of ours that keeps nothing open. */
  async wipe() {
    await this.driver.run(() => navigator.serviceWorker.getRegistrations().then((all) => Promise.all(all.map((one) => one.unregister()))));
    this.server.replaced.set('empty.html', '<!doctype html><title>empty</title>');
    await this.driver.goto(`${this.server.address}empty.html`);
    await this.driver.run(async () => {
      localStorage.clear();
      for (const name of await caches.keys()) await caches.delete(name);
      for (const { name } of await indexedDB.databases()) {
        await new Promise((done, failed) => Object.assign(indexedDB.deleteDatabase(name), { onsuccess: done, onerror: failed }));
      }
    });
  }

  async go(fragment) {
    await this.driver.run((hash) => { location.hash = hash; }, fragment);
  }

  /** Waits until some words that match stand on the page. */
  see(pattern) {
    return this.until((source) => new RegExp(source).test(document.body.innerText), String(pattern), pattern.source);
  }

  async until(holds, what, ...inputs) {
    for (const end = Date.now() + LIMIT_MS; Date.now() < end; await pause()) {
      if (await this.driver.run(holds, ...inputs).catch(() => false)) return;
    }
    throw new Error(`never came: ${what}\n${await this.driver.run(() => document.body.innerText.slice(0, 800))}`);
  }

  /** The visible control with this accessible name, or one that begins so. */
  async control(name) {
    for (const end = Date.now() + LIMIT_MS; Date.now() < end; await pause()) {
      const found = await this.driver.pick(named, name);
      if (found) return found;
    }
    throw new Error(`no control is called ${name}\n${await this.driver.run(() => document.body.innerText.slice(0, 800))}`);
  }
}

function named(name) {
  const text = (element) => element?.innerText?.replace(/\s+/g, ' ').trim();
  const byId = (element) => text(document.getElementById(element.getAttribute('aria-labelledby')));
  const called = (element) => element.getAttribute('aria-label') ?? byId(element) ?? text(element.labels?.[0]) ?? text(element) ?? '';
  const all = document.querySelectorAll('button, a[href], input, select, textarea, summary, [role=slider]');
  const seen = [...all].filter((element) => element.getClientRects().length > 0);
  const found = seen.find((element) => called(element) === name) ?? seen.find((element) => called(element).startsWith(name));
  found?.scrollIntoView({ block: 'center' });
  return found ?? null;
}

function pause() {
  return new Promise((later) => setTimeout(later, PAUSE_MS));
}
