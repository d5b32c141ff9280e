/** Slips that a row shows by itself, whatever stands around it. */
import { codeOf } from './problem.ts';

export interface RowSlip {
  what: string;
  fix: string;
  /** The row as it was meant, so that what follows is understood; undefined where it is to be deleted. */
  meant: string | undefined;
}

type Shape = readonly [
  row: RegExp,
  what: (found: string) => string,
  fix: (found: string) => string,
  meant: string | undefined,
];

/** Each shape with the sign that is wrong as its last group; `$` names in `meant` are its groups. */
const SHAPES: readonly Shape[] = [
  [
    /^()(?:<{7}|={7}|>{7}).*/,
    () => 'found the mark of two versions that were not merged',
    () => 'Keep one of the two, and delete the marked lines.',
    undefined,
  ],
  [
    /^\s*(\/\/)/,
    () => 'found "//", expected "#" before a comment',
    () => 'Begin the line with "#", or delete it.',
    undefined,
  ],
  [
    /^\s*([=*~_-])\1{2,}\s*$/,
    (sign) => `found a line of "${sign}", expected a field`,
    () => 'Delete the line, or begin it with "#".',
    undefined,
  ],
  [
    /^(\s*)([•*–—·▪◦‣+])\s+(?=\S)/u,
    (sign) => `found "${sign}" before an entry, expected a dash (-)`,
    () => 'Write "- " before the entry.',
    '$1- ',
  ],
  [
    /^(\s*)(\d+[.)])\s+(?=[\w-]+:)/,
    (sign) => `found "${sign}" before an entry, expected a dash (-)`,
    () => 'Write "- " before the entry.',
    '$1- ',
  ],
  [
    /^(\s*-)(\t)\s*/,
    () => 'found a tab after the dash, expected a space',
    () => 'Write one space after the dash.',
    '$1 ',
  ],
  [
    /^(\s*(?:- )?[\w-]+:)([\u00a0\u2000-\u200b\u202f\u3000])/,
    (sign) => `found a space of another kind (${codeOf(sign)}) after the colon, expected a space`,
    () => 'Delete it, and type the space on the keyboard.',
    '$1 ',
  ],
  [
    /^(\s*(?:- )?)"([\w-]+:\s[^"]*)"\s*$/,
    () => 'found quotes around a whole line, expected them around the value alone',
    (line) => `Write ${line}.`,
    '$1$2',
  ],
  [
    /^(\s*(?:- )?)(["'])(?=[\w-]+:\s[^"']*$)/,
    (sign) => `found a quote (${sign}) before the field name, expected none`,
    () => 'Delete the quote.',
    '$1',
  ],
  [
    /^(\s*(?:- )?[\w-]+)(:)(?=[^\s:/])/,
    () => 'found no space after the colon, expected "field: value"',
    () => 'Put a space after the colon.',
    '$1: ',
  ],
  [
    /^(\s*(?:- )?[\w-]+)\s*([=;]|[-=]>|(?<=\s)[–—→])\s*/u,
    (sign) => `found "${sign}", expected a colon after the field name`,
    () => 'Write "field: value".',
    '$1: ',
  ],
  [
    /^(\s*(?:- )?[\w-]+)\s*([：﹕∶ː])\s*/u,
    (sign) => `found a colon of another alphabet (${codeOf(sign)}), expected ":"`,
    () => 'Type the colon again.',
    '$1: ',
  ],
  [
    /^(\s*)(-)(?=[^\s-])/,
    () => 'found no space after the dash, expected "- " before each entry',
    () => 'Put a space after the dash.',
    '$1- ',
  ],
];

/** The slip of a row by itself. */
export function rowSlip(row: string): RowSlip | undefined {
  for (const [shape, what, fix, meant] of SHAPES) {
    const sign = shape.exec(row)?.slice(1).at(-1);
    if (sign === undefined) continue;
    return { what: what(sign), fix: fix(sign), meant: meant === undefined ? undefined : row.replace(shape, meant) };
  }
  return undefined;
}
