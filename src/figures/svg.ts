/**
 * The few pieces every picture is built of. A number that is not finite, or a path that holds one, never becomes SVG.
 */
type Value = string | number | undefined;

/** Text as it may stand between tags or in an attribute: content is never markup. */
export function escapeText(text: string): string {
  // Nearly all of a picture is numbers: one look is quicker than four replacements.
  if (!/[&<>"]/.test(text)) return text;
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

/** A coordinate with one decimal. */
function coordinate(name: string, value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${name}: found ${value}, expected a finite number`);
  return String(Math.round(value * 10) / 10);
}

/** Attributes that hold numbers in a text. */
const PATHS = new Set(['d', 'points', 'transform']);

function attribute(name: string, value: Value): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return ` ${name}="${coordinate(name, value)}"`;
  if (PATHS.has(name) && /NaN|Infinity|undefined/.test(value))
    throw new RangeError(`${name}: found "${value.slice(0, 60)}", expected finite numbers`);
  return ` ${name}="${escapeText(value)}"`;
}

/** An element with children that are SVG already. */
export function el(name: string, attributes: Record<string, Value>, ...children: string[]): string {
  let head = '';
  for (const key in attributes) head += attribute(key, attributes[key]);
  return children.length === 0 ? `<${name}${head}/>` : `<${name}${head}>${children.join('')}</${name}>`;
}

/** A piece of text at a point. */
export function label(x: number, y: number, text: string, attributes: Record<string, Value> = {}): string {
  return el('text', { x, y, ...attributes }, escapeText(text));
}

/** What stands for the picture when it is not seen. */
export interface Alternative {
  /** Unique on the page. */
  id: string;
  title: string;
  description: string;
}

/** Pixels to a unit where a picture stands at its own size. */
export const SCALE = 1.2;

/** A whole picture. Widths are in the units of the text: 12 is the size of a small line of print. */
export function picture(
  width: number,
  height: number,
  about: Alternative,
  kind: string,
  ...children: string[]
): string {
  const { id } = about;
  return el(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${coordinate('width', width)} ${coordinate('height', height)}`,
      // A size of its own for pictures that may be wider than the page; the style file lets the others fill their place.
      width: Math.round(width * SCALE),
      height: Math.round(height * SCALE),
      class: `figure figure-${kind}`,
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-description`,
    },
    el('title', { id: `${id}-title` }, escapeText(about.title)),
    el('desc', { id: `${id}-description` }, escapeText(about.description)),
    ...children,
  );
}

/** The numbers of a picture as a table. */
export interface Table {
  caption: string;
  head: string[];
  rows: string[][];
}

/** Breaks a name into lines of at most so many characters; a longer word is cut with an ellipsis. */
export function lines(text: string, width: number, most: number): string[] {
  const out: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = out.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width) out[out.length - 1] = `${last} ${word}`;
    else out.push(word);
  }
  const kept = out.slice(0, most).map((line) => (line.length > width ? `${line.slice(0, width - 1)}…` : line));
  if (out.length > most) kept[most - 1] = `${kept[most - 1]!.slice(0, width - 1)}…`;
  return kept;
}
