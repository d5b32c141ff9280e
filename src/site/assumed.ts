/** What each assumption says on a page: as taken, what it could be, what that would move, the line that settles it. */
import type { IsoDate } from '../planner/household.ts';
import type { Assumption } from '../planner/season-plan.ts';
import type { Format } from './formats.ts';
import { WORDS } from './words.ts';

export interface Assumed {
  what: string;
  taken: string;
  /** Empty where the other value is the same. */
  could: string;
  moves: string;
  line: string;
  reason: string;
}

const words = WORDS.machine.assumptions;
/** A shift of the margin below this is none [K]. */
const LEAST_K = 0.05;

/**
 * One assumption in a household's way of writing.
 * @param row - as ranked by the plan
 * @param format - the household's way of writing
 * @param isCharged - whether a charge falls due as the plan stands; where none does, there is none to be moved
 */
export function assumedText(
  row: Assumption,
  { amount, measuredAs, contentLine, plainDate }: Format,
  isCharged: boolean,
): Assumed {
  // Figures are compared at sight only where all have one unit.
  const largest = Math.max(...[row.low, row.value, row.high].map((v) => (typeof v === 'number' ? Math.abs(v) : 0)));
  const withUnit = (value: number | string) => {
    if (typeof value !== 'number') return words.values[value] ?? value;
    return row.unit === 'share'
      ? amount(100 * value, '%', 0)
      : measuredAs(value, row.unit === '1/h' ? '' : row.unit, row.field, largest);
  };
  const bare = (value: number | string) =>
    typeof value === 'number' ? withUnit(value).split(' ')[0]! : withUnit(value);
  const signed = (value: number, unit: string) => `${value > 0 ? '+' : ''}${amount(value, unit, unit === 'd' ? 0 : 1)}`;
  const { low, high } = row.marginShiftK;
  const margins = [...new Set([low, high].filter((k) => Math.abs(k) >= LEAST_K).map((k) => signed(k, 'K')))].map(
    (text, i, all) => (i < all.length - 1 ? text.split(' ')[0]! : text),
  );
  const could = row.low === row.high ? withUnit(row.low) : words.range(bare(row.low), withUnit(row.high));
  const brought = isCharged ? undefined : firstBrought(row);
  const moved = [
    isCharged &&
      row.firstChargeShiftDays !== 0 &&
      words.charge(WORDS.days(Math.abs(Math.round(row.firstChargeShiftDays)))),
    margins.length > 0 && words.margin(margins.length > 1 ? words.range(margins[0]!, margins[1]!) : margins[0]!),
  ].filter(Boolean);
  return {
    what: words.what(row.field),
    taken: withUnit(row.value),
    could: could === withUnit(row.value) ? '' : could,
    moves: [brought && words.brings(plainDate(brought)), moved.length > 0 && words.moves(moved.join('; '))]
      .filter(Boolean)
      .join('; '),
    line: contentLine(row.settle),
    reason: row.reason,
  };
}

/** The first day on which a charge falls due at either end of an assumption's range. */
export const firstBrought = ({
  firstChargeAt: { low, high },
}: Pick<Assumption, 'firstChargeAt'>): IsoDate | undefined => [low, high].filter((date) => date !== null).sort()[0];
