/** How each figure of the fuel plan came about. */
import type { Fuel, FuelChoice, Household, IsoDate } from '../household.ts';
import type { Derivation, FuelPlan } from '../season-plan.ts';
import { formatQuantity } from '../units/index.ts';
import { writtenDate } from '../written.ts';
import { type KeepingRow, lifeShare } from './age.ts';
import { cansFor } from './cans.ts';
import type { FuelFacts } from './facts.ts';
import type { localLimit } from './limits.ts';

export function choiceDerivation(facts: FuelFacts, choice: FuelChoice): Derivation {
  const { fuel, restDays, advised, household } = facts;
  return {
    method: 'fuel.choice',
    equation:
      'the first rule that applies: tank off, short rest, longer than fuel lives, ethanol, bare steel, injection, stabiliser',
    inputs: [
      { name: 'delivery', value: fuel.delivery, unit: '' },
      { name: 'tank', value: `${fuel.tankMaterial}${fuel.lined ? ', lined' : ''}`, unit: '' },
      { name: 'blend', value: fuel.blend, unit: '' },
      { name: 'length of the rest', value: restDays, unit: 'd' },
      {
        name: 'stabiliser at hand',
        value: household.fuelCare.stabiliserDoseMLPerL === undefined ? 'no' : 'yes',
        unit: '',
      },
      { name: 'rule', value: advised.id, unit: '' },
      { name: 'chosen by you', value: fuel.choice ?? 'no', unit: '' },
    ],
    result: { value: choice, unit: '' },
    sources: [advised.source],
    caveat: "The maker's handbook goes before these rules.",
  };
}

export function doseDerivation(levelL: number, dose: number, doseML: number, premix: boolean): Derivation {
  return {
    method: 'fuel.dose',
    equation: 'dose = litres in the full tank · dose ratio',
    inputs: [
      { name: 'fuel to treat', value: levelL, unit: 'L' },
      { name: 'dose ratio', value: dose, unit: 'mL/L' },
    ],
    result: { value: doseML, unit: 'mL' },
    sources: ['dose ratio of the product at hand, as given for the household'],
    caveat: `For all the fuel in the tank, not only for what is added. Put it in before the fresh fuel, so that filling mixes it.${
      premix ? ' Top up with two-stroke mixture of the same ratio; the dose counts the mixture.' : ''
    }`,
  };
}

export function runDerivation(fuel: Fuel, flow: number, minutes: number): Derivation {
  return {
    method: 'fuel.run',
    equation: 'minutes = volume of line and bowls / idle flow · 60',
    inputs: [
      { name: 'fuel in line, filter and bowls', value: fuel.lineAndBowlsL, unit: 'L' },
      { name: 'idle flow', value: flow, unit: 'L/h' },
    ],
    result: { value: minutes, unit: 'min' },
    sources: ['idle flow and line volume: common practice'],
    caveat:
      'Treated fuel mixes with what it pushes out, so run somewhat longer. Outdoors only: carbon monoxide. Under load on the last ride it goes faster.',
  };
}

export function drainDerivations(
  fuel: Fuel,
  household: Household,
  drainedL: number,
  cans: number,
  useBy: IsoDate | undefined,
): Derivation[] {
  const { canL, cans: atHand } = household.fuelCare;
  const bowlsL = fuel.delivery === 'carburettor' ? fuel.lineAndBowlsL : 0;
  return [
    {
      method: 'fuel.drained',
      equation: 'drained = in the tank + line and bowls (carburettor)',
      inputs: [
        { name: 'in the tank on the last day of use', value: fuel.inTankL.value, unit: 'L' },
        { name: 'line and bowls', value: bowlsL, unit: 'L' },
      ],
      result: { value: drainedL, unit: 'L' },
      sources: ['balance of volumes'],
      caveat: `By what is in the tank: between {${(fuel.inTankL.low + bowlsL).toFixed(1)} L} and {${(fuel.inTankL.high + bowlsL).toFixed(1)} L}.`,
    },
    {
      method: 'fuel.cans',
      equation: 'cans = drained / room in one can, rounded up',
      inputs: [
        { name: 'drained', value: drainedL, unit: 'L' },
        { name: 'room in one can', value: canL, unit: 'L' },
        { name: 'cans at hand', value: atHand, unit: '' },
      ],
      result: { value: cans, unit: '' },
      sources: ['1 US gal = 3.785411784 L, 1 imp gal = 4.54609 L by definition'],
      caveat: `The marked volume leaves the room for swelling. With most that can be in the tank: ${cansFor(fuel.inTankL.high + bowlsL, canL)}.`,
    },
    ...(useBy === undefined
      ? []
      : [
          {
            method: 'fuel.drained-use-by',
            equation: 'one month from draining, or the end of its life in a can where that is sooner',
            inputs: [{ name: 'room in cans', value: formatQuantity(cans * canL, 'L', household), unit: '' }],
            result: { value: useBy, unit: '' },
            sources: [
              'use within 30 days (university extension); used up fresh, not kept over the rest: common practice',
            ],
          },
        ]),
  ];
}

export function ageDerivation(
  row: KeepingRow,
  bought: IsoDate,
  meanC: number,
  plan: FuelPlan,
  firstUse: IsoDate,
  locale: string,
): Derivation {
  return {
    method: 'fuel.age',
    equation: 'use-by = purchase + life; life at T = life at 20 °C · 2^(−(T − 20)/10) above 20 °C, no credit below',
    inputs: [
      { name: 'age counted from', value: bought, unit: '' },
      { name: 'container', value: row.what, unit: '' },
      { name: 'surely good for', value: row.months.low, unit: 'months' },
      { name: 'surely stale after', value: row.months.high, unit: 'months' },
      { name: 'mean store temperature over the rest', value: meanC, unit: '°C' },
      { name: 'share of life left by warmth', value: lifeShare(meanC), unit: '' },
      { name: 'first use', value: firstUse, unit: '' },
    ],
    result: {
      value: `${writtenDate(plan.useBy.earliest, locale)} to ${writtenDate(plan.useBy.latest, locale)}: ${plan.atFirstUse.verdict} at first use`,
      unit: '',
    },
    sources: [row.source],
    caveat: `${row.caveat} Two-stroke mixture keeps as the petrol in it. Smell and colour decide in doubt: sour or dark fuel is not used.`,
  };
}

export function limitDerivation(
  limit: ReturnType<typeof localLimit>,
  country: string | undefined,
  drainedL: number | undefined,
): Derivation {
  return {
    method: 'fuel.local-limit',
    equation: 'petrol in cans against the limit of the place',
    inputs: [
      { name: 'country', value: country ?? 'not stated', unit: '' },
      { name: 'limit', value: limit.row?.limitL ?? 'not known', unit: limit.row ? 'L' : '' },
      { name: 'drained from this machine', value: drainedL ?? 0, unit: 'L' },
    ],
    result: {
      value: limit.exceeded === null ? 'not decided' : limit.exceeded ? 'exceeded' : 'within the limit',
      unit: '',
    },
    sources: limit.row ? [limit.row.source] : [],
    caveat: 'Not legal advice: check your local code. Counts this machine alone; petrol in all your cans adds up.',
  };
}
