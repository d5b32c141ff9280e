import type { Household } from '../household.ts';
import { inUnits, type Reader } from '../units/index.ts';

/** What a country (or a part of it) says of petrol kept at home. */
export interface LimitRow {
  country: string;
  where: string;
  /** Litres that may be kept in cans without more ado. */
  limitL: number;
  /** With amounts in braces. */
  text: string;
  source: string;
}

const CHECK = 'Check your local code: the fire authority, the landlord and the insurer can each set less.';

/** One row a country; parts of a country that differ stand in the text. Not legal advice. */
export const LIMITS: readonly LimitRow[] = [
  {
    country: 'GB',
    where: 'United Kingdom',
    limitL: 30,
    text: 'Up to {30 L} without notice; more, up to {275 L}, needs written notice to the petroleum enforcement authority. Plastic cans up to {10 L}, metal cans up to {20 L} each; not in living space.',
    source: 'Petroleum (Consolidation) Regulations 2014, SI 2014/1637, schedule 2',
  },
  {
    country: 'CA',
    where: 'Canada, model code',
    limitL: 30,
    text: 'Up to {30 L} in an attached garage or shed. In the dwelling itself {5 L} by the model code; Ontario allows {10 L} there.',
    source: 'National Fire Code 4.2.4.5 and 4.2.4.6 (values from memory); Ontario Fire Code 4.2.4.5 and 4.2.4.6',
  },
  {
    country: 'DE',
    where: 'Germany, garage rules of the states',
    limitL: 20,
    text: 'Up to {20 L} of petrol in tight unbreakable cans in a small garage (up to {100 m²}); up to {20 L} in a cellar, {1 L} in a flat.',
    source: 'garage ordinances of the states, for example GarBBAnO § 18(4) (secondary copies)',
  },
  {
    country: 'US',
    where: 'United States, model codes',
    limitL: 94.6,
    text: 'Model codes allow about {94.635 L} at a home with a garage; local codes set from {18.927 L} up. Approved safety cans only.',
    source: 'NFPA 30 family of codes (secondary copies; clause from memory)',
  },
];

/**
 * The limit where the household lives, against the litres it would keep in cans.
 * @param country - ISO 3166 alpha-2; undefined when not known
 * @param cannedL - litres drained [L]; undefined when nothing is drained
 * @param reader - whose units and language
 */
export function localLimit(
  country: Household['country'],
  cannedL: number | undefined,
  reader: Reader = 'metric',
): { where: string; text: string; exceeded: boolean | null; row?: LimitRow } {
  const row = LIMITS.find((r) => r.country === country?.toUpperCase());
  if (!row) {
    return {
      where: country ?? 'not stated',
      text: `No figure for this country is known here. ${CHECK}`,
      exceeded: null,
    };
  }
  const text = `${inUnits(row.text, reader)} ${CHECK}`;
  if (cannedL === undefined) {
    return {
      where: row.where,
      text: `${text} This is for petrol in cans; the machine's own tank is as a rule not counted.`,
      exceeded: null,
      row,
    };
  }
  return { where: row.where, text, exceeded: cannedL > row.limitL, row };
}
