/** Markup from values: everything put in is text, unless it is markup made here. */

export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
  toString(): string {
    return this.text;
  }
}

type Part = Markup | string | number | false | null | undefined | readonly Part[];

const ESCAPES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

function text(part: Part): string {
  if (part === false || part === null || part === undefined) return '';
  if (part instanceof Markup) return part.text;
  if (Array.isArray(part)) {
    let out = '';
    for (const one of part) out += text(one);
    return out;
  }
  return String(part).replace(/[&<>"']/g, (found) => ESCAPES[found]!);
}

/** A template whose values are escaped; nothing is printed for `false` and `undefined`. */
export function html(strings: TemplateStringsArray, ...parts: Part[]): Markup {
  let out = strings[0]!;
  for (let i = 0; i < parts.length; i++) out += text(parts[i]) + strings[i + 1]!;
  return new Markup(out);
}

/** Markup from the project's own pictures, which escape what they are given. */
export const drawn = (svg: string) => new Markup(svg);
