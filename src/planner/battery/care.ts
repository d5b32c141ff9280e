/** How a battery is kept over the rest, and why. */
import type { Battery, BatteryCare, Household, Machine, Place } from '../household.ts';
import type { Warning } from '../season-plan.ts';
import type { StoreDesignLow, StoreYear } from '../storage/types.ts';
import { formatOne } from '../units/index.ts';
import { counted } from '../written.ts';
import { type ChargerChoice, chargersFor, isOutOfReach, largestChargerA, round } from './charge.ts';
import { type ChemistryRow, chemistryRow } from './chemistries.ts';
import { type LossCurve, type LossRates, lossCurve, lossRates, monthlyText, type Surroundings } from './loss.ts';
import { batteryName } from './name.ts';
import type { Rest } from './rest.ts';
import { alonePath, freezingMonths, smallestMargin } from './run.ts';

/** Margins between the cold to be survived and the freezing point [K]. */
export const MARGIN_K = { bringIn: 3, warn: 10 };

/** Farther than this, there and back, a place is a yard of its own and a trip to it is worth saving [min]. */
export const FAR_MINUTES = 30;

/** Where a battery goes that is carried in while the household names no warm room; common practice [°C]. */
const UNNAMED_ROOM_C = 18;

/** Temperature of the room that a battery is carried to [°C]. */
export function roomTemperatureC({ batteryRoom }: Household): number {
  return batteryRoom?.temperatureC ?? UNNAMED_ROOM_C;
}

/** A battery that is looked at for its care. */
export interface CareCase {
  machine: Machine;
  battery: Battery;
  place: Place;
  rest: Rest;
  store: StoreYear;
  designLow: StoreDesignLow;
  household: Household;
  /** False where every maintainer that would serve is on another battery. */
  maintainerFree: boolean;
}

export interface Care {
  care: BatteryCare;
  reason: string;
  /** Chosen because it lasts the rest by itself, as far as is known before anything is measured. */
  lasts?: boolean | undefined;
  /** The words of the reason that it stays clear of its cold limit: so it does as long as it loses what was reckoned. */
  clear?: string | undefined;
  connected: boolean;
  keptAt: 'machine' | 'room';
  roomC: number;
  chargers: ChargerChoice;
  warnings: Omit<Warning, 'machine' | 'about'>[];
}

/** Visits a battery would need in its machine, and how near it would come to freezing. */
export interface Outlook {
  connected: boolean;
  curve: LossCurve;
  rates: LossRates;
  visits: number;
  /** Visits with the lead left on. */
  visitsLeadOn: number;
  margin: { minK: number; month: number };
}

/**
 * What the rest would be if the battery stayed in the machine and was charged when due, on the high-loss path.
 *
 * Where the household does not say, its lead comes off unless it lasts the rest with the lead on.
 */
export function outlookAtMachine(c: CareCase): Outlook {
  const row = chemistryRow(c.battery.chemistry);
  const curve = lossCurve(c.rest, { store: c.store }, c.battery.doublingK.value);
  const run = (connected: boolean): Omit<Outlook, 'visitsLeadOn'> => {
    const rates = lossRates(c.battery, connected);
    const { days, path } = alonePath(row.id, curve, rates.high, c.battery.startPct.value);
    const months = freezingMonths(row.id, c.rest, path, { designLow: c.designLow });
    return { connected, curve, rates, visits: days.length, margin: smallestMargin(months) };
  };
  const on = run(true);
  const lasts = on.visits === 0 && on.margin.minK >= MARGIN_K.warn;
  return { ...((c.battery.connected ?? lasts) ? on : run(false)), visitsLeadOn: on.visits };
}

/**
 * Chooses between a maintainer, carrying the battery in and visits, and says why; what the user chose stands, with a warning
 * where it is not safe.
 *
 * In order: where it would not last with its lead on, and there is power and a fitting maintainer is free, it stays on that
 * (lithium iron phosphate only where it never gets below 0 °C); where the acid could freeze it comes in, and so does one that may
 * not be charged in the cold of its place, since it is charged before the first start in any case; one that lasts, with its lead
 * off if need be, needs nothing; one that stands far away comes in; else it is visited.
 */
export function chooseCare(c: CareCase, outlook: Outlook = outlookAtMachine(c)): Care {
  const row = chemistryRow(c.battery.chemistry);
  const chargers = chargersFor(c.machine, c.battery, c.place, c.household);
  const coldest = Math.min(...[...new Set(c.rest.month)].map((month) => c.designLow.designC[month - 1]!));
  const pick = c.battery.care
    ? { care: c.battery.care, reason: 'Chosen by the household.', lasts: false }
    : propose(c, row, outlook, chargers, coldest);
  const care: Care = {
    ...pick,
    connected: pick.care === 'maintainer' || (pick.care === 'visits' && outlook.connected),
    keptAt: pick.care === 'carry-in' ? 'room' : 'machine',
    roomC: roomTemperatureC(c.household),
    chargers,
    warnings: [],
  };
  care.reason += connectionReason(c, care);
  care.warnings = careWarnings(c, row, care, coldest);
  return care;
}

/** Surroundings of the battery under a care. */
export function surroundings(care: Pick<Care, 'keptAt' | 'roomC'>, store: StoreYear): Surroundings {
  return care.keptAt === 'room' ? { roomC: care.roomC } : { store };
}

function propose(c: CareCase, row: ChemistryRow, outlook: Outlook, chargers: ChargerChoice, coldest: number) {
  const { visits, margin } = outlook;
  const say = (value: number, unit: string) => formatOne(value, unit, c.household);
  const room = c.battery.removable ? c.household.batteryRoom : undefined;
  const tooColdToCharge = row.minChargeC !== undefined && coldest < row.minChargeC;
  const freezes = margin.minK < MARGIN_K.bringIn;
  // Between the two limits a warning says how near it comes.
  const isClear = margin.minK >= MARGIN_K.warn;
  const clear = isClear ? `, and stays clear of ${limitOf(row)}` : '';
  const alone = isClear ? ` It stays clear of ${limitOf(row)}.` : '';
  const needed = outlook.visitsLeadOn > 0 || freezes;
  if (needed && chargers.maintainers.length > 0 && c.maintainerFree && !tooColdToCharge)
    return {
      care: 'maintainer' as const,
      reason: `There is power at ${c.place.name} and "${chargers.maintainers[0]!.name}" suits it, so its lead can stay on; without it ${visits === 0 ? 'the lead would have to come off' : `${counted(visits, 'visit')} would be needed`}${freezes ? ', and the acid could freeze' : ''}.`,
    };
  if (freezes && room)
    return {
      care: 'carry-in' as const,
      reason: `In the machine it would come ${nearness(margin.minK, row, c.household)} (the limit is ${say(MARGIN_K.bringIn, 'K')}), so it spends the rest in ${room.name}.`,
    };
  if (tooColdToCharge && room)
    return {
      care: 'carry-in' as const,
      reason: `It must not be charged below ${say(row.minChargeC!, '°C')}, and ${c.place.name} can fall to ${say(coldest, '°C')} in the coldest to be reckoned with: in ${room.name} it can be charged on any day, so it spends the rest there.`,
    };
  const stays = `${c.battery.removable ? 'no warm room is named' : 'it does not come out'}, so it stays in the machine`;
  const outOfReach = isOutOfReach(c.battery, c.place);
  const charging =
    tooColdToCharge && !outOfReach
      ? ` It must not be charged below ${say(row.minChargeC!, '°C')}, and ${c.place.name} can fall to ${say(coldest, '°C')} in the coldest to be reckoned with${freezes ? '' : `; ${stays}`}: charge it on a warm day, or bring ${c.battery.removable ? 'it' : 'the machine'} into the warm for the charge.`
      : '';
  if (visits === 0 && !freezes)
    return {
      care: 'visits' as const,
      reason: `It lasts the rest by itself, even at its fastest loss${clear}: no charge is needed before start-up.${charging}`,
      lasts: true,
      clear,
    };
  if (c.place.tripMinutes > FAR_MINUTES && visits > 0 && room)
    return {
      care: 'carry-in' as const,
      reason: `${c.place.name} is ${round(c.place.tripMinutes, 0, c.household.locale)} minutes away and ${counted(visits, 'visit')} would be needed, so it spends the rest in ${room.name}.`,
    };
  const cold = freezes ? ` It would come ${nearness(margin.minK, row, c.household)}, and ${stays}.` : '';
  if (visits === 0)
    return {
      care: 'visits' as const,
      reason: `Its charge would last the rest, even at its fastest loss.${cold}${charging}`,
    };
  if (outOfReach)
    return {
      care: 'visits' as const,
      reason: `Nothing can charge it where it rests: it does not come out, and there is no power at ${c.place.name}.${cold}`,
    };
  const why = !c.place.power
    ? `there is no power at ${c.place.name}`
    : chargers.maintainers.length === 0
      ? 'none of your chargers is a maintainer that suits it'
      : tooColdToCharge
        ? `${c.place.name} gets too cold to leave a charger on`
        : 'the maintainer that suits it is on another battery';
  return {
    care: 'visits' as const,
    reason: `It is charged on computed days (${counted(visits, 'charge')} if it were alone): ${why}.${cold || alone}${charging}`,
    clear: alone,
  };
}

function connectionReason(c: CareCase, care: Care): string {
  if (care.connected || care.care !== 'visits' || !(c.battery.drainMA.high > 0)) return '';
  const perMonth = (c.battery.drainMA.high * 0.72 * 100) / (c.battery.capacityAh * c.battery.health.value);
  return ` Its lead comes off: a key-off drain of up to ${round(c.battery.drainMA.high, 1, c.household.locale)} mA would take ${monthlyText(perMonth)}.`;
}

function careWarnings(c: CareCase, row: ChemistryRow, care: Care, coldest: number): Care['warnings'] {
  const warnings: Care['warnings'] = [];
  const { battery, place, machine } = c;
  const say = (value: number, unit: string) => formatOne(value, unit, c.household);
  if (care.care === 'maintainer') {
    if (!place.power)
      warnings.push({
        level: 'warning',
        text: `${batteryName(machine)} is to stay on a maintainer, but there is no power at ${place.name}.`,
        act: battery.removable
          ? 'Bring power there, carry the battery in, or choose visits; until then it is charged as on visits.'
          : 'Bring power there, or let the machine rest where there is power; until then reckon with no charge at all.',
      });
    else if (care.chargers.maintainers.length === 0)
      warnings.push({
        level: 'warning',
        text: `None of your chargers may stay on ${batteryName(machine)}. ${care.chargers.none?.why ?? `None of those that suit it is a maintainer that can be used at ${place.name}.`}`,
        act: `Get a maintainer with a programme for ${row.name}. It holds a voltage, so a small one does; on its label no more than ${round(largestChargerA(battery), 1, c.household.locale)} A.`,
      });
    else if (!c.maintainerFree)
      warnings.push({
        level: 'warning',
        text: `The maintainer that suits ${batteryName(machine)} is on another battery already.`,
        act: 'Change it over weekly, or get a second one.',
      });
    if (row.minChargeC !== undefined && coldest < row.minChargeC)
      warnings.push({
        level: 'danger',
        text: `${place.name} can fall to ${say(coldest, '°C')} in the coldest to be reckoned with: lithium iron phosphate must not be charged below ${say(0, '°C')}, and a maintainer charges.`,
        act: 'Carry the battery in, or disconnect it and charge it on a warm day.',
      });
  }
  if (care.care === 'carry-in') {
    if (!battery.removable)
      warnings.push({
        level: 'warning',
        text: `${batteryName(machine)} is to be carried in, but is said not to come out.`,
        act: 'Check whether it comes out; if not, choose a maintainer or visits.',
      });
    if (!c.household.batteryRoom)
      warnings.push({
        level: 'note',
        text: `No warm room is named; ${say(care.roomC, '°C')} is taken for ${batteryName(machine)}.`,
        act: 'Say that there is one: "I can carry the battery into the house" in the form, batteryRoom with its temperature in household.yaml. Warmth makes a battery lose charge faster.',
      });
  }
  return warnings;
}

/** What the cold must not bring it to. */
const limitOf = (row: ChemistryRow) => (row.acid === undefined ? 'its lowest storage temperature' : 'freezing');

/** "within 3 K of freezing", "4 K beyond its lowest storage temperature". */
function nearness(minK: number, row: ChemistryRow, { units }: Household): string {
  const what = limitOf(row);
  const near = formatOne(Math.abs(minK), 'K', units);
  return minK < 0 ? `${near} beyond ${what}` : `within ${near} of ${what}`;
}

/** What the freezing margin of the final plan calls for; `isKept`: a maintainer keeps it full, as far as readings tell. */
export function marginWarning(
  c: Pick<CareCase, 'machine' | 'battery' | 'place' | 'household'>,
  care: Pick<Care, 'keptAt'> & { isKept: boolean },
  margin: { minK: number; month: number },
): Care['warnings'] {
  if (care.keptAt === 'room' || !(margin.minK < MARGIN_K.warn)) return [];
  const row = chemistryRow(c.battery.chemistry);
  const acid = row.acid !== undefined;
  const outOfReach = isOutOfReach(c.battery, c.place);
  const near = nearness(margin.minK, row, c.household);
  const text = `In the coldest that ${c.place.name} must be reckoned with, ${batteryName(c.machine)} comes ${near}.`;
  if (margin.minK >= MARGIN_K.bringIn)
    return [
      {
        level: 'warning',
        text,
        act: acid
          ? care.isKept
            ? 'Only full is it that far from freezing: see before a cold spell that the maintainer works, and read the volts.'
            : outOfReach
              ? 'Have it full as the rest begins: nothing can charge it there. Or let the machine rest where it is milder.'
              : 'Keep it well charged: charge it before a cold spell, not after.'
          : `Look up the lowest storage temperature of this very battery, or ${c.battery.removable ? 'carry it in' : 'move the machine'} before the coldest weeks.`,
      },
    ];
  const act = !c.battery.removable
    ? outOfReach
      ? 'It does not come out, and nothing can charge it there: move the machine, or have a workshop take the battery out.'
      : 'It does not come out: keep it fully charged, on a maintainer, or move the machine.'
    : c.household.batteryRoom
      ? `Carry it to ${c.household.batteryRoom.name}.`
      : 'Carry it to a place that stays above freezing, and say so: "I can carry the battery into the house" in the form, batteryRoom in household.yaml.';
  return [{ level: 'danger', text, act }];
}
