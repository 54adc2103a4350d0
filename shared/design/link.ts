import { canonicalJson } from './canonical.ts';
import { type ParsedDesign, parseDesign } from './file.ts';
import baseOne from './linkBase1.json' with { type: 'json' };
import { type Design, designVersion } from './schema.ts';

/**
 * A design as a link: "#d1.CHECK.DATA". The letter says how the data is packed (d: deflate, j: plain), the number is
 * the design's version, the check is a sum over the whole design. Only what differs from the base of that version
 * is in the data, as JSON in base64url.
 */
const shape = /^#?([dj])(\d+)\.([0-9a-z]+)\.([\w-]+)[).,;:!?'">\]]*$/;

/**
 * What the links of each version leave out. These are frozen: a link made today must say the same in ten years, so
 * they never follow the defaults of the sheet. A new version of the design gets a base of its own.
 */
const bases: Readonly<Record<number, unknown>> = { 1: baseOne };

/** No design is larger unpacked; a longer one is an attack or a mistake. */
const largestText = 1_000_000;

type Tree = Readonly<Record<string, unknown>>;

const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What follows the page's address. */
export async function writeLink(design: Design): Promise<string> {
  const text = JSON.stringify(differenceTo(bases[designVersion], design));
  const bytes = new TextEncoder().encode(text);
  const check = checkSum(design);
  const packed = await pack(bytes);
  return packed === null
    ? `#j${designVersion}.${check}.${toBase64(bytes)}`
    : `#d${designVersion}.${check}.${toBase64(packed)}`;
}

/** The design that a link carries, or every fault of it. */
export async function readLink(hash: string): Promise<ParsedDesign> {
  const [, packing, version, check, data] = shape.exec(hash) ?? [];
  if (packing === undefined || data === undefined) return refuse('it is damaged or not complete');
  if (Number(version) > designVersion) {
    return refuse(
      `it was made by a newer sheet (version ${version}); this one reads up to version ${designVersion}`,
    );
  }
  const difference = await unpacked(packing, data);
  if (difference === undefined) return refuse('it is damaged, most likely cut short on its way');
  const raw = applied(bases[Number(version)], difference);
  if (checkSum(raw) !== check) {
    return refuse('it is damaged on its way, or was made by another edition of the sheet');
  }
  return parseDesign(JSON.stringify(raw));
}

function refuse(message: string): ParsedDesign {
  return { ok: false, faults: [{ path: '', message }] };
}

async function unpacked(packing: string, data: string): Promise<unknown> {
  try {
    const bytes = fromBase64(data);
    return JSON.parse(new TextDecoder().decode(packing === 'd' ? await unpack(bytes) : bytes));
  } catch {
    return undefined;
  }
}

/** What must be put into the base to make the design; where that cannot be said, the design itself in a list. */
function differenceTo(base: unknown, design: Design): unknown {
  return covers(base, design) ? (difference(base, design) ?? {}) : [design];
}

/** Whether everything the base has is in the value, too, so that nothing of it would have to be taken away. */
function covers(base: unknown, value: unknown): boolean {
  if (!isTree(base) || !isTree(value)) return true;
  return Object.entries(base).every(([key, inner]) => key in value && covers(inner, value[key]));
}

function difference(base: unknown, value: unknown): unknown {
  if (!isTree(base) || !isTree(value)) {
    return JSON.stringify(base) === JSON.stringify(value) ? undefined : value;
  }
  const entries = Object.entries(value)
    .map(([key, inner]) => [key, key in base ? difference(base[key], inner) : inner] as const)
    .filter(([, inner]) => inner !== undefined);
  return entries.length === 0 ? undefined : Object.fromEntries(entries);
}

function applied(base: unknown, change: unknown): unknown {
  return Array.isArray(change) ? change[0] : merged(base, change);
}

function merged(base: unknown, change: unknown): unknown {
  if (!isTree(base) || !isTree(change)) return change;
  const entries = Object.entries(change).map(([key, inner]) => [
    key,
    key in base ? merged(base[key], inner) : inner,
  ]);
  return { ...base, ...Object.fromEntries(entries) };
}

/** FNV-1a over the JSON with its keys in order, 32 bits. */
function checkSum(raw: unknown): string {
  let sum = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(canonicalJson(raw))) {
    sum = Math.imul(sum ^ byte, 0x01000193) >>> 0;
  }
  return sum.toString(36);
}

/** Deflated; null where the browser cannot. */
async function pack(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer> | null> {
  if (typeof CompressionStream === 'undefined') return null;
  try {
    return await through(bytes, new CompressionStream('deflate-raw'));
  } catch {
    return null;
  }
}

function unpack(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  return through(bytes, new DecompressionStream('deflate-raw'));
}

async function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
): Promise<Uint8Array<ArrayBuffer>> {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > largestText) {
      await reader.cancel();
      throw new Error('too large');
    }
    pieces.push(value as Uint8Array<ArrayBuffer>);
  }
  return new Uint8Array(await new Blob(pieces).arrayBuffer());
}

function toBase64(bytes: Uint8Array): string {
  const letters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(letters).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  const letters = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
}
