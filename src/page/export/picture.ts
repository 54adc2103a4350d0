import './paper.css';

/** Puts a drawing into the host; gives back how to take it away. */
export type Draw = (host: HTMLElement) => () => void;

/** What a picture says above the drawing. */
export interface Caption {
  readonly title: string;
  readonly design: string;
}

export interface Picture {
  /** A whole SVG file: nothing in it points outside. */
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

const svgSpace = 'http://www.w3.org/2000/svg';

/** Room above the drawing for title and name of the design. */
const headHeight = 44;
const padding = 14;
/** Pixels of a PNG for each unit of the drawing. */
const pngScale = 2;

/** What a style sheet may say of a shape or a text, each also an attribute of SVG. */
const attributes = [
  'fill',
  'fill-opacity',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-opacity',
  'stroke-dasharray',
  'stroke-linejoin',
  'stroke-linecap',
  'opacity',
  'paint-order',
] as const;

const textAttributes = ['font-family', 'font-size', 'font-weight', 'font-style', 'text-anchor'] as const;

/** What says something only on the page: to its styles, to readers of the screen, to the keyboard. */
const pageOnly = /^(class|role|tabindex|style|aria-.*|data-.*)$/;

const localReference = /url\(["']?[^"')]*#([^"')]+)["']?\)/;

/** Writes what the style sheets say into the copy, so that it looks the same without them. */
function resolveStyles(shown: Element, copy: Element, wanted: Set<string>): void {
  const style = getComputedStyle(shown);
  if (style.display === 'none' || style.visibility === 'hidden') {
    copy.remove();
    return;
  }
  const isText = shown instanceof SVGTextContentElement;
  for (const name of isText ? [...attributes, ...textAttributes] : attributes) {
    const value = style.getPropertyValue(name);
    const reference = localReference.exec(value)?.[1];
    if (reference !== undefined) wanted.add(reference);
    if (value !== '') copy.setAttribute(name, reference === undefined ? value : `url(#${reference})`);
  }
  for (const { name } of [...copy.attributes]) if (pageOnly.test(name)) copy.removeAttribute(name);
  resolveChildren(shown, copy, wanted);
}

function resolveChildren(shown: Element, copy: Element, wanted: Set<string>): void {
  const copies = [...copy.children];
  for (const [index, child] of [...shown.children].entries()) resolveStyles(child, copies[index]!, wanted);
}

/** A hatching or the like that stands elsewhere on the page comes along. */
function definitions(wanted: Set<string>, colours: Element): readonly Element[] {
  return [...wanted].flatMap((id) => {
    const found = document.getElementById(id);
    if (!found) return [];
    const shown = found.cloneNode(true) as Element;
    colours.append(shown);
    const copy = shown.cloneNode(true) as Element;
    resolveChildren(shown, copy, new Set());
    shown.remove();
    return [copy];
  });
}

function element(name: string, values: Readonly<Record<string, string | number>>, text = ''): SVGElement {
  const made = document.createElementNS(svgSpace, name);
  for (const [key, value] of Object.entries(values)) made.setAttribute(key, String(value));
  if (text !== '') made.textContent = text;
  return made;
}

function captionTexts({ title, design }: Caption, host: Element): readonly SVGElement[] {
  const face = getComputedStyle(host).getPropertyValue('--text-face').trim();
  const line = { x: padding, 'font-family': face, fill: '#000' };
  return [
    element('text', { ...line, y: 20, 'font-size': '15px', 'font-weight': 600 }, title),
    element('text', { ...line, y: 37, 'font-size': '12px' }, design),
  ];
}

/** Draws out of sight on white paper, and takes it as a file that needs nothing else. */
export function takePicture(draw: Draw, caption: Caption): Picture {
  const host = document.createElement('div');
  host.className = 'on-paper picture-host';
  host.setAttribute('aria-hidden', 'true');
  document.body.append(host);
  const clear = draw(host);
  try {
    const shown = host.querySelector('svg');
    if (!shown) throw new Error('There is nothing drawn.');
    return pictureOf(shown, caption, host);
  } finally {
    clear();
    host.remove();
  }
}

function pictureOf(shown: SVGSVGElement, caption: Caption, host: Element): Picture {
  const box = shown.viewBox.baseVal;
  const copy = shown.cloneNode(true) as SVGSVGElement;
  const wanted = new Set<string>();
  resolveStyles(shown, copy, wanted);
  const width = box.width + 2 * padding;
  const height = box.height + headHeight + padding;
  const root = element('svg', { xmlns: svgSpace, width, height, viewBox: `0 0 ${width} ${height}` });
  const body = element('g', { transform: `translate(${padding - box.x} ${headHeight - box.y})` });
  body.append(...copy.childNodes);
  const defs = element('defs', {});
  defs.append(...definitions(wanted, shown));
  root.append(
    element('title', {}, `${caption.title}: ${caption.design}`),
    defs,
    element('rect', { width, height, fill: '#fff' }),
    ...captionTexts(caption, host),
    body,
  );
  const text = new XMLSerializer().serializeToString(root);
  return { svg: `<?xml version="1.0" encoding="UTF-8"?>\n${text}\n`, width, height };
}

/** The same as pixels, two for each unit of the drawing. */
export async function asPng({ svg, width, height }: Picture): Promise<Blob> {
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(width * pngScale);
    canvas.height = Math.round(height * pngScale);
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('This browser has no canvas.');
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((done, fail) =>
      canvas.toBlob((blob) => (blob ? done(blob) : fail(new Error('The picture is empty.'))), 'image/png'),
    );
  } finally {
    URL.revokeObjectURL(url);
  }
}
