import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createSheetServer, fileFor, listen } from '../../src/build/serve.mjs';

const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
const home = join(folder, 'dist');
const script = `${'// a line of script\n'.repeat(200)}`;
const server = createSheetServer(home);
let port = 0;

beforeAll(async () => {
  mkdirSync(join(home, 'assets'), { recursive: true });
  writeFileSync(join(home, 'index.html'), '<!doctype html><title>sheet</title>');
  writeFileSync(join(home, 'manifest.webmanifest'), '{}');
  writeFileSync(join(home, 'assets', 'main-1.js'), script);
  writeFileSync(join(folder, 'secret.txt'), 'outside');
  port = await listen(server, { port: 0 });
});

afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true });
});

interface Got {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: Buffer;
}

/** Sends the path as it stands; fetch would tidy it up first. */
function get(path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Got> {
  return new Promise((resolve, reject) => {
    const asking = request({ host: '127.0.0.1', port, path, headers, method }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }),
      );
    });
    asking.on('error', reject);
    asking.end();
  });
}

describe('what is served', () => {
  test.each([
    ['/', 'text/html; charset=utf-8', 'no-cache'],
    ['/index.html?x=1', 'text/html; charset=utf-8', 'no-cache'],
    ['/manifest.webmanifest', 'application/manifest+json; charset=utf-8', 'no-cache'],
    ['/assets/main-1.js', 'text/javascript; charset=utf-8', 'public, max-age=31536000, immutable'],
  ])('%s has its media type and life time', async (path, type, life) => {
    const got = await get(path);
    expect([got.status, got.headers['content-type'], got.headers['cache-control']]).toEqual([
      200,
      type,
      life,
    ]);
    expect(got.headers['x-content-type-options']).toBe('nosniff');
  });

  test('gzip for those who ask, plain for those who do not or who decline', async () => {
    const zipped = await get('/assets/main-1.js', { 'accept-encoding': 'br, gzip' });
    expect(zipped.headers['content-encoding']).toBe('gzip');
    expect(gunzipSync(zipped.body).toString()).toBe(script);
    for (const encoding of ['', 'gzip;q=0', 'br']) {
      const plain = await get('/assets/main-1.js', { 'accept-encoding': encoding });
      expect(plain.headers['content-encoding']).toBeUndefined();
      expect(plain.body.toString()).toBe(script);
    }
  });

  test('an unchanged file is not sent again, a changed one is', async () => {
    const file = join(home, 'changing.json');
    writeFileSync(file, '{"a":1}');
    const tag = String((await get('/changing.json')).headers.etag);
    expect((await get('/changing.json', { 'if-none-match': tag })).status).toBe(304);
    writeFileSync(file, '{"a":22}');
    const again = await get('/changing.json', { 'if-none-match': tag });
    expect([again.status, again.body.toString()]).toEqual([200, '{"a":22}']);
  });

  test('HEAD gives the head alone; other methods are refused', async () => {
    const head = await get('/assets/main-1.js', {}, 'HEAD');
    expect([head.status, head.body.length, head.headers['content-length']]).toEqual([
      200,
      0,
      String(script.length),
    ]);
    expect((await get('/', {}, 'POST')).status).toBe(405);
  });
});

describe('nothing outside the folder', () => {
  test.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/assets/../../secret.txt',
    '/..%2fsecret.txt',
    '/..%5csecret.txt',
    '//etc/passwd',
    '/%00',
    '/%E0%A4%A',
    '/assets',
    '/missing.js',
  ])('%s is not found', async (path) => {
    const got = await get(path);
    expect(got.status).toBe(404);
    expect(got.body.toString()).not.toContain('outside');
  });

  test('a folder whose name only begins alike is outside', () => {
    expect(fileFor('/srv/dist', '/', '/../dist-old/index.html')).toBeNull();
  });

  test('under a prefix, only what lies under the prefix', () => {
    expect(fileFor('/srv/dist', '/a/sheet/', '/a/sheet/')).toBe(join('/srv/dist', 'index.html'));
    expect(fileFor('/srv/dist', '/a/sheet/', '/index.html')).toBeNull();
    expect(fileFor('/srv/dist', '/a/sheet/', '/a/sheet')).toBeNull();
  });
});

describe('ports', () => {
  test('a taken port is passed over only when more attempts are allowed', async () => {
    const other = createServer();
    const taken = await listen(other, { port: 0 });
    const second = createSheetServer(home);
    await expect(listen(second, { port: taken })).rejects.toThrow('EADDRINUSE');
    const found = await listen(second, { port: taken, attempts: 20 });
    expect(found).toBeGreaterThan(taken);
    second.close();
    other.close();
  });
});
