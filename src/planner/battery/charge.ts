import type { Battery, Charger, Household, Machine, Place } from '../household.ts';
import { withSeparator } from '../written.ts';
import { chemistryRow } from './chemistries.ts';
import { batteryName } from './name.ts';

/**
 * Charging currents, as shares of the capacity an hour: the one home of the limit that every text gives, by a charger's label, and
 * of the current that a charge's hours are reckoned with. Common practice, from memory.
 *
 * A sealed battery takes a fifth of its capacity, by what makers usually allow; of a flooded one a quarter above a tenth is no reason
 * to get another charger; over its whole charge lead–acid takes a tenth. Lithium iron phosphate takes half its capacity to the end,
 * the standard charge of cell data sheets.
 */
const RATES_PER_H: Record<Battery['chemistry'], { label: number; reckoned: number }> = {
  'flooded-antimony': { label: 0.125, reckoned: 0.1 },
  'flooded-calcium': { label: 0.125, reckoned: 0.1 },
  agm: { label: 0.2, reckoned: 0.1 },
  gel: { label: 0.2, reckoned: 0.1 },
  lifepo4: { label: 0.5, reckoned: 0.5 },
};

/**
 * Charge to put back.
 * @param battery - battery
 * @param statePct - state of charge before [%]
 * @returns ampere-hours at the charger [Ah]; 0 when it is at its target already
 * Source: capacity × what is missing ÷ charge efficiency of the chemistry (lead–acid 0.85: common practice).
 * Error: 10 %, mostly of the efficiency.
 */
export function chargeAh(battery: Battery, statePct: number): number {
  if (!(statePct >= 0 && statePct <= 100))
    throw new RangeError(`found state of charge ${statePct} %, expected 0 to 100 %`);
  const row = chemistryRow(battery.chemistry);
  const missing = Math.max(0, row.chargeToPct - statePct) / 100;
  return (battery.capacityAh * battery.health.value * missing) / row.chargeEfficiency;
}

/** Largest current that a charge's hours are reckoned with [A]. */
export function largestChargeA({ capacityAh, chemistry }: Battery): number {
  return capacityAh * RATES_PER_H[chemistry].reckoned;
}

/** The largest current on the label of a charger or maintainer that is used [A]. */
export function largestChargerA({ capacityAh, chemistry }: Pick<Battery, 'capacityAh' | 'chemistry'>): number {
  return capacityAh * RATES_PER_H[chemistry].label;
}

/**
 * Time on the charger.
 * @param ampHours - charge to put back [Ah]
 * @param currentA - the charger's current; no more than `largestChargeA` is reckoned [A]
 * @returns hours, the absorption time of a lead–acid battery included [h]
 */
export function chargeHours(battery: Battery, ampHours: number, currentA: number): number {
  if (!(currentA > 0)) throw new RangeError(`found charger current ${currentA} A, expected more than 0`);
  return ampHours / Math.min(currentA, largestChargeA(battery)) + chemistryRow(battery.chemistry).absorptionH;
}

/** The chargers that serve a battery, or why none does and what to do. */
export interface ChargerChoice {
  chargers: Charger[];
  /** Chargers that may stay connected in the machine's own place. */
  maintainers: Charger[];
  none?: { why: string; act: string } | undefined;
}

/** Nothing can charge it where it rests: it does not come out, and there is no electricity. */
export const isOutOfReach = ({ removable }: Pick<Battery, 'removable'>, { power }: Pick<Place, 'power'>): boolean =>
  !removable && !power;

/** What can be done about a battery that is out of reach. Common practice. */
export const OUT_OF_REACH_ACT =
  'Let the machine rest where there is electricity, bring electricity to it, or take it to some for each charge; or have a workshop take the battery out for the rest.';

/**
 * Chargers of the household that suit a battery and can meet it.
 *
 * A battery that comes out is carried to where the power is; one that does not needs power at its place, and there a charger
 * of that place or one that is carried about.
 */
export function chargersFor(machine: Machine, battery: Battery, place: Place, household: Household): ChargerChoice {
  const limit = largestChargerA(battery);
  const row = chemistryRow(battery.chemistry);
  const right = household.chargers.filter((c) => c.chemistries.includes(battery.chemistry));
  const gentle = right.filter((c) => c.currentA <= limit * (1 + 1e-9));
  const powered = (id: string) => household.places.some((p) => p.id === id && p.power);
  const anyPower = household.places.some((p) => p.power) || household.batteryRoom !== undefined;
  const here = (c: Charger) => place.power && (c.placeId === undefined || c.placeId === place.id);
  const fetched = (c: Charger) => battery.removable && (c.placeId === undefined ? anyPower : powered(c.placeId));
  const chargers = gentle.filter((c) => here(c) || fetched(c));
  const maintainers = gentle.filter((c) => c.maintainer && here(c));
  const get = `Get or borrow a charger of at most ${round(limit, 1, household.locale)} A with a programme for ${row.name}, or one that can be set so low.`;
  const none = isOutOfReach(battery, place)
    ? {
        why: `It does not come out of the machine, and there is no electricity at ${place.name}.`,
        act: OUT_OF_REACH_ACT,
      }
    : household.chargers.length === 0
      ? {
          why: 'You have given no charger.',
          act: `${get} Then say so: "Your charger gives" in the form, chargers in household.yaml.`,
        }
      : right.length === 0
        ? {
            why: `None of your chargers is for ${row.name}.`,
            act: `${get} One for another kind of battery can ruin it.`,
          }
        : gentle.length === 0
          ? {
              why: `${right.map((c) => `"${c.name}" gives ${round(c.currentA, 1, household.locale)} A`).join(', ')}; this battery should have no more than ${round(limit, 1, household.locale)} A.`,
              act: get,
            }
          : !battery.removable
            ? {
                why: `${batteryName(machine)} does not come out, and none of the fitting chargers is at ${place.name}.`,
                act: 'Bring one there, or a charger that can be carried.',
              }
            : {
                why: 'A fitting charger is at hand, but no place with power to use it.',
                act: 'Find a place with a socket, or a warm room with one, and say so: "Is there a socket?" in the form, power of a place or batteryRoom in the files.',
              };
  return { chargers, maintainers, none: chargers.length > 0 ? undefined : none };
}

export function round(value: number, digits: number, locale: string): string {
  const text = String(Number(value.toFixed(digits))).replace('-', '−');
  return withSeparator(text, locale);
}
