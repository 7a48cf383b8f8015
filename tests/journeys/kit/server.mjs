// A static host for the built folder, as plain as the plainest one there is: files, types, ETags, gzip. It can be
// stopped and started on the same port, and serves from a sub-path, because any static host must do.

import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import http from 'node:http';
import path from 'node:path';
import { gzipSync } from 'node:zlib';

const TYPES = {
  '.css': 'text/css',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};
const UNDER = '/somewhere/else/';

export class Server {
  /** @param folder the built folder */
  constructor(folder) {
    this.folder = folder;
    /** Bytes sent instead of a file's own: `replaced.set('sw.js', text)`. */
    this.replaced = new Map();
    /** Bytes that went over the wire in bodies, by file name. */
    this.sent = new Map();
    this.port = 0;
  }

  get address() {
    return `http://127.0.0.1:${this.port}${UNDER}`;
  }

  async start() {
    this.http = http.createServer((request, response) => this.#answer(request, response));
    await new Promise((resolve, reject) => {
      this.http.once('error', reject);
      this.http.listen(this.port, '127.0.0.1', resolve);
    });
    this.port = this.http.address().port;
    return this;
  }

  async stop() {
    if (!this.http) return;
    const closed = new Promise((resolve) => this.http.close(resolve));
    this.http.closeAllConnections();
    await closed;
    this.http = null;
  }

  async #answer(request, response) {
    const name = nameOf(request.url);
    const body = name === null ? null : await this.#bytes(name);
    if (body === null) {
      response.writeHead(404).end();
      return;
    }
    const etag = `"${createHash('sha1').update(body).digest('hex')}"`;
    const headers = { 'Content-Type': TYPES[path.extname(name)] ?? 'application/octet-stream', ETag: etag };
    if (request.headers['if-none-match'] === etag) {
      response.writeHead(304, headers).end();
      return;
    }
    const packed = gzipSync(body, { level: 9 });
    this.sent.set(name, (this.sent.get(name) ?? 0) + packed.length);
    response.writeHead(200, { ...headers, 'Content-Encoding': 'gzip', 'Content-Length': packed.length }).end(packed);
  }

  async #bytes(name) {
    if (this.replaced.has(name)) return Buffer.from(this.replaced.get(name));
    try {
      return await readFile(path.join(this.folder, name));
    } catch {
      return null;
    }
  }
}

function nameOf(url) {
  const { pathname } = new URL(url, 'http://local');
  if (!pathname.startsWith(UNDER) || pathname.includes('..')) return null;
  return decodeURIComponent(pathname.slice(UNDER.length)) || 'index.html';
}
