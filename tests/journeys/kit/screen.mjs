// A phone (or a desk) with the app on it, and the words a journey is written in: open, tap, type, see, drag.
//
// Everything is found by what a person sees or a screen reader says: accessible names, labels, text. An error in
// the console and a request to another origin make the journey fail, unless it said beforehand that they come.

import assert from 'node:assert/strict';
import { mkdirSync } from 'node:fs';
import path from 'node:path';

export const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 3, hasTouch: true, isMobile: true };
export const DESK = { viewport: { width: 1280, height: 800 }, deviceScaleFactor: 1 };
export const OUT = path.resolve(import.meta.dirname, '../../out');

const ROLES = ['button', 'link', 'tab', 'switch', 'checkbox', 'radio', 'option', 'menuitem', 'slider', 'img'];

export class Screen {
  /** A fresh browser profile: `device` is PHONE or DESK, `options` are playwright's context options. */
  static async fresh(browser, server, device = PHONE, options = {}) {
    const context = await browser.newContext({
      locale: 'en-GB',
      timezoneId: 'Europe/Lisbon',
      acceptDownloads: true,
      ...device,
      ...options,
    });
    context.setDefaultTimeout(Number(process.env.PATIENCE_MS ?? 8000));
    const screen = new Screen(context, server, device.hasTouch === true);
    context.on('request', (request) => screen.#judge(request.url()));
    screen.#follow(await context.newPage());
    return screen;
  }

  constructor(context, server, touch) {
    this.context = context;
    this.server = server;
    this.touch = touch;
    this.faults = [];
    this.expected = [];
    this.session = null;
  }

  /** Opens the app at a fragment: `open('#demo')`. */
  async open(fragment = '') {
    await this.page.goto(this.server.address + fragment);
    await this.started();
    // The demo is laid out, then leads on to its scenes; whoever goes elsewhere before is brought back by it.
    if (fragment === '#demo') await this.page.waitForFunction(() => location.hash !== '#demo');
  }

  /** Reloads, as a person would. */
  async reload() {
    await this.page.reload();
    await this.started();
  }

  /** Waits until the app stands there instead of its cover. */
  async started() {
    await this.page.waitForSelector('#cover', { state: 'detached' });
  }

  /** Waits until the worker holds every file, so that the network may go. */
  async keptOffline() {
    await this.page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  }

  /** A second tab of the same browser; its screen shares this one's profile, checks and end. */
  async secondTab() {
    const other = new Screen(this.context, this.server, this.touch);
    other.faults = this.faults;
    other.expected = this.expected;
    other.#follow(await this.context.newPage());
    return other;
  }

  /** The control with this accessible name. `role` narrows; `name` may be a regular expression. */
  control(name, role) {
    const exact = typeof name === 'string';
    const found = (role ? [role] : ROLES).map((each) => this.page.getByRole(each, { name, exact }));
    return found.reduce((all, each) => all.or(each)).filter({ visible: true }).first();
  }

  async tap(name, role) {
    const control = this.control(name, role);
    await (this.touch ? control.tap() : control.click());
  }

  /** Replaces what stands in the field with this label. */
  async type(label, text) {
    await this.field(label).fill(text);
  }

  field(label) {
    return this.page.getByLabel(label, { exact: typeof label === 'string' }).filter({ visible: true }).first();
  }

  async choose(label, option) {
    await this.field(label).selectOption(typeof option === 'string' ? { label: option } : { label: await this.#optionLike(label, option) });
  }

  async #optionLike(label, pattern) {
    const words = await this.field(label).locator('option').allTextContents();
    return words.find((word) => pattern.test(word)) ?? assert.fail(`no option like ${pattern} in ${words}`);
  }

  async see(text) {
    await this.page.getByText(text).filter({ visible: true }).first().waitFor();
  }

  async unseen(text) {
    await this.page.getByText(text).filter({ visible: true }).first().waitFor({ state: 'hidden' });
  }

  async value(label) {
    return this.field(label).inputValue();
  }

  /** Pastes a text outside of every field. */
  async paste(text) {
    await this.page.evaluate((text) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', text);
      document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true }));
    }, text);
  }

  /** Presses keys, one after the other, on whatever has the focus. */
  async keys(...names) {
    for (const name of names) await this.page.keyboard.press(name);
  }

  /** Drags with a finger from one point to another, in CSS pixels, one touch event a step. */
  async drag(from, to, steps = 20) {
    const session = await this.#session();
    const touch = (type, points) => session.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    await touch('touchStart', [from]);
    for (let step = 1; step <= steps; step++) {
      const part = step / steps;
      await touch('touchMove', [{ x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part }]);
    }
    await touch('touchEnd', []);
    // No finger taps sooner, and the browser takes such a tap for the drag's end.
    await this.page.waitForTimeout(100);
  }

  /** Drags the control with this name by so many pixels. */
  async dragBy(name, dx, dy, role) {
    const box = await this.control(name, role).boundingBox();
    const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await this.drag(from, { x: from.x + dx, y: from.y + dy });
  }

  /** The phone stands here, and its owner lets the app know. */
  async standAt(latitude, longitude, accuracy = 8) {
    await this.context.grantPermissions(['geolocation'], { origin: new URL(this.server.address).origin });
    await this.context.setGeolocation({ latitude, longitude, accuracy });
  }

  /** The owner says no: `refuse('geolocation')`. */
  async refuse(permission) {
    const session = await this.#session();
    const { targetInfo } = await session.send('Target.getTargetInfo');
    await session.send('Browser.setPermission', {
      permission: { name: permission },
      setting: 'denied',
      origin: new URL(this.server.address).origin,
      browserContextId: targetInfo.browserContextId,
    });
  }

  /** It is this instant for the app, and stays so: `at('2027-03-11T17:28:00Z')`. Timers run on. Before `open`. */
  async at(instant) {
    await this.page.clock.setFixedTime(instant);
  }

  /** The app on the home screen instead of a tab of the browser, as phones say it whose app has a storage of its own. */
  async asApp() {
    await this.page.addInitScript(() => Object.defineProperty(navigator, 'standalone', { value: true }));
  }

  /** The phone is held so, in degrees, as the device orientation standard has it. Before `open` the first time. */
  async hold({ alpha, beta, gamma }) {
    const sensors = ['accelerometer', 'gyroscope', 'magnetometer'];
    await this.context.grantPermissions(sensors, { origin: new URL(this.server.address).origin });
    const session = await this.#session();
    await session.send('DeviceOrientation.setDeviceOrientationOverride', { alpha, beta, gamma });
  }

  /** The phone's long edge points to a magnetic bearing and a height, degrees, as an absolute orientation sensor says. */
  async point(bearing, height) {
    const sensors = ['accelerometer', 'gyroscope', 'magnetometer'];
    await this.context.grantPermissions([...sensors, 'geolocation'], { origin: new URL(this.server.address).origin });
    await this.page.evaluate(([alpha, beta]) => {
      const tell = () => window.dispatchEvent(new DeviceOrientationEvent('deviceorientationabsolute', { absolute: true, alpha, beta, gamma: 0 }));
      clearInterval(window.pointing);
      // Long enough for the readings of before to be forgotten.
      window.pointing = setInterval(tell, 50);
    }, [(360 - bearing) % 360, height]);
  }

  /**
   * The same by the browser's own sensor: the long edge points to a magnetic bearing and a height. The quaternion turns
   * the phone about its z by the bearing, then about its x by the height.
   */
  async sense(bearing, height) {
    const sensors = ['accelerometer', 'gyroscope', 'magnetometer'];
    await this.context.grantPermissions([...sensors, 'geolocation'], { origin: new URL(this.server.address).origin });
    const session = await this.#session();
    const half = (degrees) => (degrees * Math.PI) / 360;
    const [a, b] = [half(-bearing), half(height)];
    const quaternion = {
      x: Math.cos(a) * Math.sin(b), y: Math.sin(a) * Math.sin(b), z: Math.sin(a) * Math.cos(b), w: Math.cos(a) * Math.cos(b),
    };
    if (!this.sensing) await session.send('Emulation.setSensorOverrideEnabled', { enabled: true, type: 'absolute-orientation' });
    this.sensing = true;
    await session.send('Emulation.setSensorOverrideReadings', { type: 'absolute-orientation', reading: { quaternion } });
  }

  /** Waits until the last change is on the disk. */
  async saved() {
    // An edit is on its way to the shelves a frame later; until then "Saved" speaks of the one before.
    await this.page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    await this.page.locator('.kept', { hasText: 'Saved' }).waitFor();
  }

  /** No network for the page; stop the server as well to be sure of the worker. */
  async offline(off = true) {
    await this.context.setOffline(off);
  }

  /** A slower processor: 4 is a phone of the middle class. */
  async slower(times) {
    await (await this.#session()).send('Emulation.setCPUThrottlingRate', { rate: times });
  }

  /** A picture in tests/out. */
  async picture(name, options = {}) {
    mkdirSync(OUT, { recursive: true });
    await this.page.screenshot({ path: path.join(OUT, `${name}.png`), ...options });
  }

  /** Does `work`, which starts a download, and gives its text and suggested name. */
  async download(work) {
    const [file] = await Promise.all([this.page.waitForEvent('download'), work()]);
    const chunks = [];
    for await (const chunk of await file.createReadStream()) chunks.push(chunk);
    return { name: file.suggestedFilename(), text: Buffer.concat(chunks).toString('utf8') };
  }

  /** Does `work`, which opens a file picker, and picks a file with this text. */
  async pick(work, name, text) {
    const [chooser] = await Promise.all([this.page.waitForEvent('filechooser'), work()]);
    await chooser.setFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
  }

  /** Forgets everything the browser kept for the app. */
  async wipe() {
    const session = await this.#session();
    const origin = new URL(this.server.address).origin;
    await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
  }

  /** Console errors that match are part of the journey. */
  expectFault(pattern) {
    this.expected.push(pattern);
  }

  /** Ends the screen; anything unexpected that was logged fails here. */
  async close() {
    await this.context.close();
    const unexpected = this.faults.filter((fault) => !this.expected.some((pattern) => pattern.test(fault)));
    assert.deepEqual(unexpected, [], 'the browser reported faults');
  }

  #follow(page) {
    this.page = page;
    page.on('pageerror', (error) => this.faults.push(`error: ${error.message}`));
    page.on('console', (message) => {
      if (message.type() === 'error') this.faults.push(`console: ${message.text()} (${message.location().url})`);
    });
  }

  #judge(url) {
    const { protocol, origin } = new URL(url);
    if (protocol === 'data:' || protocol === 'blob:') return;
    if (origin !== new URL(this.server.address).origin) this.faults.push(`request to another origin: ${url}`);
  }

  /** One session a page: what it overrides ends with it. */
  async #session() {
    this.session ??= await this.context.newCDPSession(this.page);
    return this.session;
  }
}
