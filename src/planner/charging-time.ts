/** How long a charge takes, as it is said everywhere: one figure, up to the next half hour. */
import { withSeparator } from './written.ts';

/** Up to the next half hour: nobody is helped by a figure that is too short [h]. */
function saidHours(hours: number): number {
  if (!(hours >= 0)) throw new RangeError(`found ${hours}, expected a number of 0 or more`);
  return Math.ceil(hours * 2 - 1e-9) / 2;
}

/**
 * "13.5 h".
 * @param hours - [h]
 * @param locale - language of the decimal sign
 */
export function chargeHoursText(hours: number, locale: string): string {
  return `${withSeparator(String(saidHours(hours)), locale)} h`;
}

/**
 * "12.5 h (at most 14 h)"; without the bracket where both are the same.
 * @param hours - as expected [h]
 * @param most - at the fastest loss [h]
 * @param locale - language of the decimal sign
 */
export function chargeTimeText(hours: number, most: number, locale: string): string {
  const [about, atMost] = [chargeHoursText(hours, locale), chargeHoursText(most, locale)];
  return about === atMost ? about : `${about} (at most ${atMost})`;
}
