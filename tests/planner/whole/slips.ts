/** What a plan says has to read as said by a person: no word is missing, no figure is none. */
import type { SeasonPlan } from '../../../src/planner/season-plan.ts';

/** Fields that are whole sentences. */
const SENTENCES =
  /\.(?:text|why|act|caveat|careReason|noCharger|reason|tap|detail|doNotRide|caveats\[\]|measures\[\]|reasons\[\])$/;
/** Said in the words of the user's own files, or a row of a table that gives a reason in few words. */
const AS_WRITTEN = /\.(?:notes\[\]\.text|parts\[\]\.why|readings\[\]\.why|assumptions\[\]\.reason)$/;
/** A pure number has no unit; a site may have no address, a torque no note; what stays open is closed by nothing. */
const MAY_BE_EMPTY = /\.(?:unit|siteUrl|closedBy|note)$/;
/** Names, addresses, formulas and lines of files. */
const NO_PROSE =
  /\.(?:id|uid|path|settle|siteUrl|revised|equation|item|openedBy|closedBy|step|opens\[\]|closes\[\]|after\[\])$/;
const DAY = /\.(?:date|earliest|latest|due|firstUse|lastUse|start|ready|done|orderBy|needBy|asOf|overdue)$/;

const SLIPS: [what: string, slip: RegExp][] = [
  ['a value that is none', /undefined|NaN|\bnull\b|Infinity|\[object|Invalid/],
  ['a space too many', /^\s|\s$| {2}|\( | \)/],
  ['a space or a word missing before a mark', / [,.;:)](?!\d)|\(\)|""|[,;:]{2}|[,;:]\.|\(,/],
  ['a mark without a space after it', /[a-z][,;:](?=[A-Za-z])|[a-z]{2}\.[A-Z]/],
  ['a loud mark that leads no caution', /(?<!^)!/],
  ['the same word twice', /\b([a-z]{2,}) \1\b/],
];

/** Every text of a plan with its field. */
function* textsOf(value: unknown, field = ''): Generator<[field: string, text: string]> {
  if (typeof value === 'string') yield [field, value];
  else if (Array.isArray(value)) for (const one of value) yield* textsOf(one, `${field}[]`);
  else if (typeof value === 'object' && value !== null)
    for (const [name, one] of Object.entries(value)) yield* textsOf(one, `${field}.${name}`);
}

/** Texts of a plan that are not whole, with their field and what is wrong. */
export function slipsIn(plan: SeasonPlan): string[] {
  const slips = new Set<string>();
  for (const [field, text] of textsOf(plan)) {
    const say = (what: string) => slips.add(`${field}: ${what}: ${text}`);
    if (text === '') {
      if (!MAY_BE_EMPTY.test(field)) say('empty');
      continue;
    }
    if (NO_PROSE.test(field)) continue;
    if (DAY.test(field) && !/^\d{4}-\d\d-\d\d$|^\d\d:\d\d$/.test(text)) say('no day');
    for (const line of text.split('\n'))
      for (const [what, slip] of SLIPS) if (slip.test(line)) slips.add(`${field}: ${what}: ${line}`);
    if (text.split('(').length !== text.split(')').length) say('half a bracket');
    if (SENTENCES.test(field) && !AS_WRITTEN.test(field)) {
      if (!/^[\p{Lu}\d"“−-]/u.test(text)) say('no capital');
      if (!/[.:?]["”]?$/.test(text)) say('no full stop');
    }
  }
  return [...slips].sort();
}
