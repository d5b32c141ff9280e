/** Words of every kind that a content file may hold, hostile ones among them. */
import fc from 'fast-check';

/** Names that break what is careless: markup, quotes, entities, YAML, iCalendar, paths, right-to-left, joined emoji. */
export const HOSTILE = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "O'Neill & Söhne",
  '&lt;b&gt; &amp; </title>',
  'back\\slash; semi, comma: colon',
  'BEGIN:VEVENT',
  '{{name}} %s $1',
  '../../etc/passwd',
  'دراجة نارية',
  'אופנוע Two',
  '雪上車',
  '🏍️ family 👨‍👩‍👧',
  'é combining é',
  '- dash first',
  '# not a comment',
  'null',
  '1e3',
  'no',
  '*star',
  '% percent',
  'a'.repeat(80),
] as const;

const PLAIN = ['Juniper', 'Magpie', 'Sleet', 'Badger', 'Old Fern', 'Tin shed', 'The long hall'] as const;

const letters = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 40 })
  .filter(
    (text) =>
      text.trim() !== '' &&
      text.length <= 80 &&
      !/[\p{Cc}\p{Cs}\p{Co}\p{Cn}\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/u.test(text),
  );

/** One line of text that content accepts. */
export const lineArb = fc.oneof(
  { arbitrary: fc.constantFrom(...PLAIN), weight: 4 },
  { arbitrary: fc.constantFrom(...HOSTILE), weight: 1 },
  { arbitrary: letters, weight: 1 },
);

/** Text of several lines. */
export const paragraphArb = fc.array(lineArb, { minLength: 1, maxLength: 3 }).map((lines) => lines.join('\n'));

/** A figure with a unit, as a person writes it. */
export function quantityArb(min: number, max: number, unit: string, digits = 2): fc.Arbitrary<string> {
  const scale = 10 ** digits;
  return fc
    .integer({ min: Math.ceil(min * scale), max: Math.floor(max * scale) })
    .map((n) => `${(n / scale).toFixed(digits)} ${unit}`);
}

/** A figure, alone or with the range it could have. */
export function rangedArb(min: number, max: number, unit: string, digits = 1) {
  const one = quantityArb(min, max, unit, digits);
  const group = fc
    .tuple(one, one, one)
    .map((three) => three.toSorted((a, b) => Number.parseFloat(a) - Number.parseFloat(b)))
    .map(([low, value, high]) => ({ low, value, high }));
  return fc.oneof({ arbitrary: one, weight: 2 }, { arbitrary: group, weight: 1 });
}

/** All fields may be left out. */
export function some<T extends Record<string, unknown>>(model: { [K in keyof T]: fc.Arbitrary<T[K]> }) {
  return fc.record(model, { requiredKeys: [] });
}
