/** What a coolant plan is made from, and what its parts share. */
import type { Household, IsoDate, Machine, Place } from '../household.ts';
import type { CoolantPlan } from '../season-plan.ts';
import { formatQuantity, unitFor } from '../units/index.ts';
import { type Cold, LEAST_STRENGTH, MARGIN_K } from './derivations.ts';
import { type Due, dueOf, FROST_C } from './due.ts';
import type { GlycolRow } from './glycols.ts';
import { freezingPointC, strengthFor, tableEnd } from './strength.ts';

/** The cold of a rest, or of what is left of it, as `Rest` has it. */
export interface ColdOfRest {
  /** The coldest to be reckoned with in the store and outdoors [°C]. */
  designLowC: number;
  outdoorLowC: number;
  /** First day on which the store can reach −1 °C; undefined when it cannot. */
  firstFrost?: IsoDate | undefined;
  /** First day on which a typical year can get down to so many °C. */
  firstColdOf: (where: 'store' | 'outdoors', coldC: number) => IsoDate | undefined;
}

export interface CoolantInput {
  machine: Machine;
  place: Place;
  household: Household;
  rest: ColdOfRest;
  /** The same of what is left of the rest. */
  ahead: ColdOfRest;
  asOf: IsoDate;
  /** It is ticked that the coolant was tested; that it was strengthened. */
  tested?: boolean | undefined;
  strengthened?: boolean | undefined;
}

export interface CoolantCase extends CoolantInput {
  cold: Cold;
  glycol: GlycolRow['glycol'];
  needC: number;
  /** What it stands [°C]; undefined where nobody knows. */
  freezeC?: number | undefined;
  /** What the cold asks for, volume fraction; undefined where no mixture reaches it. */
  needed?: number | undefined;
  /** What is aimed at, volume fraction: no less than a third, and the strongest where none is strong enough. */
  aimed: number;
  base: Pick<CoolantPlan, 'needC' | 'aimC' | 'targetStrength'>;
  /** The store cannot freeze it during the rest, in no year and without its heater. */
  isFrostFree: boolean;
  /** By when it must be seen to; undefined where no frost is to come. */
  due: Due | undefined;
  q: (value: number, unit: string) => string;
}

/**
 * Works out what the coolant must hold.
 * @param input - with a machine that has coolant
 * Source: margin and least strength: common practice. A heater can fail, so where only one keeps the store warm the cold of
 *   outdoors is reckoned with.
 */
export function coolantCase(input: CoolantInput): CoolantCase {
  const { machine, place, household, rest } = input;
  if (!(rest.designLowC > -150 && rest.designLowC < 60))
    throw new RangeError(`design low: found ${rest.designLowC} °C, expected a temperature of the store`);
  const isHeated = place.enclosure.setpointC !== undefined && rest.outdoorLowC < rest.designLowC;
  const cold: Cold = { storeC: rest.designLowC, heaterFailsC: isHeated ? rest.outdoorLowC : undefined };
  const needC = (cold.heaterFailsC ?? cold.storeC) - MARGIN_K;
  const glycol = machine.cooling.coolant?.glycol ?? 'ethylene';
  const needed = strengthFor(glycol, needC);
  const strength = machine.cooling.coolant?.strength;
  const freezeC =
    strength === undefined ? undefined : freezingPointC(glycol, Math.min(strength, tableEnd(glycol).strength));
  const aimed = Math.max(LEAST_STRENGTH, needed ?? tableEnd(glycol).strength);
  return {
    ...input,
    cold,
    glycol,
    needC,
    freezeC,
    needed,
    aimed,
    base: { needC, aimC: aimed === needed ? needC : freezingPointC(glycol, aimed), targetStrength: aimed },
    isFrostFree: rest.firstFrost === undefined && (cold.heaterFailsC ?? cold.storeC) >= FROST_C,
    due: dueOf({ ...input, isHeated, freezeC }),
    q: (value, unit) => formatQuantity(value, unitFor(unit, 'coolant'), household),
  };
}

/** A volume fraction as whole percent. */
export const percent = (share: number) => `${(share * 100).toFixed(0)} %`;

/** The cold that is reckoned with, in words. */
export function coldText({ cold: { storeC, heaterFailsC }, place, q }: CoolantCase): string {
  return heaterFailsC === undefined
    ? `in the coldest to be reckoned with the store reaches ${q(storeC, '°C')}`
    : `only a heater keeps ${place.name} at ${q(storeC, '°C')}: where it fails, the cold of outdoors comes in, ${q(heaterFailsC, '°C')} in the coldest to be reckoned with`;
}

/** What the coolant is to hold, in words. */
export function wantedText({ needC, needed, aimed, base, glycol, cold, q }: CoolantCase): string {
  const end = tableEnd(glycol);
  if (needed === undefined)
    return `No mixture of ${glycol} glycol reaches ${q(needC, '°C')}, as would be needed; the strongest, ${percent(end.strength)}, freezes at ${q(end.freezeC, '°C')}.`;
  const heater =
    cold.heaterFailsC === undefined
      ? ''
      : ` A heater can fail, so the cold of outdoors is reckoned with, ${q(cold.heaterFailsC, '°C')}.`;
  const wanted =
    aimed > needed
      ? `It is to hold a third of ${glycol} glycol or more, which freezes at ${q(base.aimC, '°C')}: the cold asks for less, but below a third its rust inhibitors do not protect. Half and half is usual.`
      : `It must not freeze above ${q(needC, '°C')} (${percent(aimed)} ${glycol} glycol).`;
  return wanted + heater;
}

/** How a test comes into the plan. */
export const writeDown = (machine: Machine) =>
  `Write down the freezing point that the tester showed: "Coolant tested, freezes at" in the form, cooling.freezesAt in ${machine.file}.`;

/** Text and warnings of one part, without what all parts share. */
export interface CoolantDraft {
  plan: Omit<CoolantPlan, 'needC' | 'aimC' | 'targetStrength'>;
  notes: Note[];
}

export interface Note {
  level: 'note' | 'warning' | 'danger';
  text: string;
  act: string;
}
