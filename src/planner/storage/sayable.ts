import type { Climate } from '../climate/index.ts';
import type { Enclosure, Sayable } from './types.ts';

/**
 * Stores quicker than this follow the weather within the hour: there metal sweats by the chance of single hours, and
 * monthly figures cannot tell how often [h].
 */
const QUICK_STORE_H = 3;

/** Root mean square of the logarithms over places held out of the fit, by half-years, rounded up. */
const SLOW_STORE = { condensation: 1.8, frost: 1.4, wet: 1.2 };
const QUICK_STORE = { condensation: 2.6, frost: 2.1, wet: 1.2 };

/**
 * Which counts may be shown for a store.
 * @param climate - normals or one hourly year
 * @param enclosure - the store
 * @returns what the method can carry, and the words to show in place of what it cannot
 * Source: the report of climate checks (drawn weather against real hourly years): in stores of 3 h and more counts are
 *   right within the typical factors below; in quicker ones condensation was off by up to eight at single places.
 */
export function sayableFor(climate: Climate, enclosure: Enclosure): Sayable {
  if (climate.kind === 'hourly') {
    return {
      condensation: true,
      frost: true,
      wet: true,
      why: '',
      typicalFactor: { condensation: 1, frost: 1, wet: 1 },
    };
  }
  if (enclosure.timeConstantH < QUICK_STORE_H && enclosure.setpointC === undefined) {
    return {
      condensation: false,
      frost: false,
      wet: true,
      why: 'How often metal sweats or frosts in a store this thin cannot be told from monthly figures, only from hourly ones.',
      typicalFactor: QUICK_STORE,
    };
  }
  if (climate.humidityEstimated) {
    return {
      condensation: false,
      frost: false,
      wet: true,
      why: 'Humidity at this station is an estimate: too rough to count condensation and frost from, and wet hours may be off by a third.',
      typicalFactor: SLOW_STORE,
    };
  }
  return { condensation: true, frost: true, wet: true, why: '', typicalFactor: SLOW_STORE };
}
