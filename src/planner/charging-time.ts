/** How much a charge puts back and how long it takes, as it is said everywhere: hours up to the next half. */
import type { Charge } from './season-plan.ts';
import { withSeparator } from './written.ts';

/** Less is said as nothing [Ah]. */
const NOTHING_AH = 0.05;

/**
 * What a charge is got ready for: what it puts back as expected, or, where that is nothing, at the fastest loss. A lithium battery that
 * came to its rest fuller than it is kept may stand above that level still.
 * @param charge - of the battery's plan
 */
export function chargeAsked<T extends Pick<Charge, 'ampHours' | 'ampHoursMost' | 'hours' | 'hoursMost'>>(charge: T): T {
  const { ampHours, ampHoursMost, hoursMost } = charge;
  return ampHours < NOTHING_AH ? { ...charge, ampHours: ampHoursMost, hours: hoursMost } : charge;
}

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
 * "12.5 h (at most 14 h)"; without the bracket where both are the same, "14 h at most" where as expected it takes none.
 * @param hours - as expected [h]
 * @param most - at the fastest loss [h]
 * @param locale - language of the decimal sign
 */
export function chargeTimeText(hours: number, most: number, locale: string): string {
  if (saidHours(hours) === 0 && most > 0) return `${chargeHoursText(most, locale)} at most`;
  const [about, atMost] = [chargeHoursText(hours, locale), chargeHoursText(most, locale)];
  return about === atMost ? about : `${about} (at most ${atMost})`;
}
