import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';

const compress = promisify(gzip);

/** @type {Record<string, string>} */
const mediaTypes = {
  '.css': 'text/css; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.woff2': 'font/woff2',
};

const alreadyCompressed = new Set(['.png', '.ico', '.woff2']);

/** Below one network packet compression gains nothing. */
const smallestCompressed = 1024;

/**
 * @typedef {{ body: Buffer, zipped: Buffer | null, tag: string, stamp: string }} Loaded
 * @typedef {{ status: number, headers: Record<string, string>, body: Buffer | string }} Answer
 */

/**
 * The file that a request path names, or null when the path is malformed, lies outside the prefix or would
 * leave the folder.
 * @param {string} folder absolute
 * @param {string} prefix begins and ends with a slash
 * @param {string} url as in request.url
 * @returns {string | null}
 */
export function fileFor(folder, prefix, url) {
  const pathText = url.split(/[?#]/, 1)[0] ?? '';
  let path;
  try {
    path = decodeURIComponent(pathText);
  } catch {
    return null;
  }
  if (!path.startsWith(prefix) || path.includes('\0') || path.includes('\\')) return null;
  const file = resolve(folder, `.${sep}${path.slice(prefix.length)}`);
  if (file !== folder && !file.startsWith(folder + sep)) return null;
  return path.endsWith('/') ? join(file, 'index.html') : file;
}

/**
 * A server for one folder of built files: right media types, gzip, revalidation by content, nothing outside
 * the folder. File names under assets/ carry a hash of their content, so those may be kept for ever.
 * @param {string} folder
 * @param {{ prefix?: string }} [options] prefix: the path the folder appears under, with slashes at both ends
 */
export function createSheetServer(folder, options = {}) {
  const home = resolve(folder);
  const prefix = options.prefix ?? '/';
  /** @type {Map<string, Loaded>} */
  const loaded = new Map();

  return createServer(async (request, response) => {
    const { status, headers, body } = await answer(request).catch(() =>
      plain(500, 'The file could not be read.'),
    );
    response.writeHead(status, {
      'X-Content-Type-Options': 'nosniff',
      ...headers,
    });
    response.end(request.method === 'HEAD' ? undefined : body);
  });

  /**
   * @param {import('node:http').IncomingMessage} request
   * @returns {Promise<Answer>}
   */
  async function answer(request) {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      return plain(405, 'Only GET and HEAD are answered.', {
        Allow: 'GET, HEAD',
      });
    }
    const file = fileFor(home, prefix, request.url ?? '/');
    const content = file === null ? null : await load(file);
    if (file === null || content === null) return plain(404, 'There is no such file here.');

    const zip = content.zipped !== null && acceptsGzip(request.headers['accept-encoding']);
    const tag = zip ? `"${content.tag}-gz"` : `"${content.tag}"`;
    /** @type {Record<string, string>} */
    const headers = {
      'Cache-Control': file.startsWith(join(home, 'assets') + sep)
        ? 'public, max-age=31536000, immutable'
        : 'no-cache',
      ETag: tag,
      Vary: 'Accept-Encoding',
    };
    if (request.headers['if-none-match'] === tag) return { status: 304, headers, body: '' };

    const body = zip && content.zipped !== null ? content.zipped : content.body;
    if (zip) headers['Content-Encoding'] = 'gzip';
    headers['Content-Type'] = mediaTypes[extname(file)] ?? 'application/octet-stream';
    headers['Content-Length'] = String(body.length);
    return { status: 200, headers, body };
  }

  /**
   * @param {string} file
   * @returns {Promise<Loaded | null>}
   */
  async function load(file) {
    const facts = await stat(file).catch(() => null);
    if (facts === null || !facts.isFile()) return null;
    const stamp = `${facts.mtimeMs} ${facts.size}`;
    const known = loaded.get(file);
    if (known?.stamp === stamp) return known;

    const body = await readFile(file);
    const worthZipping = body.length >= smallestCompressed && !alreadyCompressed.has(extname(file));
    const zipped = worthZipping ? await compress(body, { level: 9 }) : null;
    const tag = createHash('sha256').update(body).digest('base64url').slice(0, 16);
    const fresh = { body, zipped, tag, stamp };
    loaded.set(file, fresh);
    return fresh;
  }
}

/**
 * @param {number} status
 * @param {string} words
 * @param {Record<string, string>} [headers]
 * @returns {Answer}
 */
function plain(status, words, headers = {}) {
  const body = `${words}\n`;
  return {
    status,
    headers: {
      'Content-Type': 'text/plain; charset=utf-8',
      'Content-Length': String(Buffer.byteLength(body)),
      ...headers,
    },
    body,
  };
}

/** @param {string | string[] | undefined} header */
function acceptsGzip(header) {
  return /\bgzip\b(?!\s*;\s*q=0(\.0*)?\s*(,|$))/.test(String(header ?? ''));
}

/**
 * Starts to listen.
 * @param {import('node:http').Server} server
 * @param {{ port: number, host?: string, attempts?: number }} where attempts: how many ports to try, one after the other
 * @returns {Promise<number>} the port in use
 */
export async function listen(server, { port, host = '127.0.0.1', attempts = 1 }) {
  for (let candidate = port; ; candidate += 1) {
    try {
      return await listenOnce(server, candidate, host);
    } catch (error) {
      const taken = /** @type {NodeJS.ErrnoException} */ (error).code === 'EADDRINUSE';
      if (!taken || candidate + 1 >= port + attempts) throw error;
    }
  }
}

/**
 * @param {import('node:http').Server} server
 * @param {number} port
 * @param {string} host
 * @returns {Promise<number>}
 */
function listenOnce(server, port, host) {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : port);
    });
  });
}
