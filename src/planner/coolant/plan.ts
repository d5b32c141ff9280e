import { addDays, addMonths } from '../dates.ts';
import type { Household, IsoDate, Machine, Place } from '../household.ts';
import type { CoolantPlan, Derivation, Warning } from '../season-plan.ts';
import { formatQuantity, inUnits } from '../units/index.ts';
import { writtenDate } from '../written.ts';
import {
  ageDerivations,
  type Coolant,
  freezeDerivation,
  MARGIN_K,
  needDerivation,
  swapDerivation,
  testDerivation,
} from './derivations.ts';
import { drainAndReplace, freezingPointC, reachOfOneSwap, type Swap, strengthFor, tableEnd } from './strength.ts';

export interface CoolantInput {
  machine: Machine;
  place: Place;
  household: Household;
  /** The cold that the store must be survived in, lowest over the rest [°C]. */
  designLowC: number;
  /** First day on which the store can reach −1 °C; undefined when it cannot during the rest. */
  firstFrostInStore?: IsoDate | undefined;
  asOf: IsoDate;
}

/** Up to here coolant stronger than the table's end protects at least as well as that end; from memory. */
const PLATEAU_TO = 0.65;
/** Water begins to freeze; the store below this cracks a block that holds water. */
const FROST_C = -1;

type Note = Pick<Warning, 'level' | 'text' | 'act'>;

/**
 * Plans the coolant of one machine over its rest.
 * @param input - machine, place, household, design low of the store over the rest, first frost in the store
 * @returns the plan and its warnings; undefined for a machine that has no coolant
 * Source: ASHRAE glycol tables; margin and age limits: common practice.
 */
export function planCoolant(input: CoolantInput): { plan: CoolantPlan; warnings: Warning[] } | undefined {
  const { machine, designLowC } = input;
  if (machine.cooling.kind !== 'liquid') return undefined;
  if (!(designLowC > -150 && designLowC < 60))
    throw new RangeError(`design low: found ${designLowC} °C, expected a temperature of the store`);
  const coolant = machine.cooling.coolant;
  const needC = designLowC - MARGIN_K;
  const ageDue = coolant?.lastChanged ? addMonths(coolant.lastChanged, Math.round(coolant.lifeYears * 12)) : undefined;
  const drafted =
    coolant?.strength === undefined ? unknownStrength(input, needC) : knownStrength(input, coolant, needC);
  const notes = [...drafted.notes, ...ageNotes(input, ageDue), ...coldUseNotes(input)];
  const plan: CoolantPlan = {
    ...drafted.plan,
    ageDue,
    derivations: [
      needDerivation(designLowC, needC),
      ...drafted.plan.derivations,
      ...ageDerivations(coolant, ageDue),
    ].map((d) => (d.caveat === undefined ? d : { ...d, caveat: inUnits(d.caveat, input.household.units) })),
  };
  return { plan, warnings: notes.map((n) => ({ ...n, machine: machine.id, about: 'coolant' })) };
}

interface Draft {
  plan: CoolantPlan;
  notes: Note[];
}

function unknownStrength(input: CoolantInput, needC: number): Draft {
  const { machine, household, designLowC, firstFrostInStore, asOf } = input;
  const q = (value: number) => formatQuantity(value, '°C', household.units);
  const coolant = machine.cooling.coolant;
  const glycol = coolant?.glycol ?? 'ethylene';
  const target = strengthFor(glycol, needC);
  const end = tableEnd(glycol);
  const wanted =
    target === undefined
      ? `No mixture of ${glycol} glycol reaches ${q(needC)}, as would be needed; the strongest, ${(100 * end.strength).toFixed(0)} %, freezes at ${q(end.freezeC)}.`
      : `It must not freeze above ${q(needC)} (${(100 * target).toFixed(0)} % ${glycol} glycol).`;
  const freezes = firstFrostInStore !== undefined || designLowC < FROST_C;
  if (!freezes) {
    const text = `Strength unknown. The store does not get below ${q(designLowC)} during the rest, so nothing freezes; test it at the next service.`;
    return { plan: { needC, targetStrength: target, enough: null, text, derivations: [] }, notes: [] };
  }
  const testBy = firstFrostInStore ? addDays(firstFrostInStore, -1) : machine.season.lastUse;
  const late = asOf > testBy && asOf < machine.season.firstUse;
  return {
    plan: {
      needC,
      targetStrength: target,
      enough: null,
      testBy,
      text: `Strength unknown: test it with a refractometer by ${writtenDate(testBy, household.locale)}, before the store can reach ${q(FROST_C)}. ${wanted}`,
      derivations: [testDerivation(input.firstFrostInStore, designLowC, testBy)],
    },
    notes: [
      {
        level: late ? 'danger' : 'warning',
        text: `Nobody knows whether the coolant freezes, and the store can reach ${q(designLowC)}.`,
        act: late
          ? 'Test it today: the day before the first frost in the store has passed.'
          : `Test it by ${writtenDate(testBy, household.locale)}; plain water cracks the block from ${q(FROST_C)} down.`,
      },
    ],
  };
}

function knownStrength(input: CoolantInput, coolant: Coolant, needC: number): Draft {
  const { household } = input;
  const q = (value: number, unit: string) => formatQuantity(value, unit, household.units);
  const percent = (share: number) => `${(share * 100).toFixed(0)} %`;
  const strength = coolant.strength!;
  const end = tableEnd(coolant.glycol);
  const target = strengthFor(coolant.glycol, needC);
  const base = { needC, strength, targetStrength: target };

  if (strength > PLATEAU_TO) {
    return {
      plan: {
        ...base,
        enough: null,
        text: `${percent(strength)} ${coolant.glycol} glycol is beyond what protects best (up to ${percent(PLATEAU_TO)}): stronger coolant freezes earlier again and cools worse. Thin it to about 50 % with water.`,
        derivations: [],
      },
      notes: [
        {
          level: 'warning',
          text: `Coolant of ${percent(strength)} glycol: its freezing point is not in the table.`,
          act: 'Thin it with distilled water to about 50 % and test it.',
        },
      ],
    };
  }

  const freezeC = freezingPointC(coolant.glycol, Math.min(strength, end.strength));
  const freezing = freezeDerivation(coolant, freezeC);
  if (freezeC <= needC) {
    return {
      plan: {
        ...base,
        freezeC,
        replaceL: 0,
        swaps: 0,
        enough: true,
        text: `${percent(strength)} freezes at ${q(freezeC, '°C')}, ${q(needC, '°C')} is needed: protected.`,
        derivations: [freezing],
      },
      notes: [],
    };
  }
  if (target === undefined) {
    return {
      plan: {
        ...base,
        freezeC,
        enough: false,
        text: `No mixture of ${coolant.glycol} glycol reaches ${q(needC, '°C')}; ${percent(end.strength)}, the strongest of the table, freezes at ${q(end.freezeC, '°C')}. Bring it to that, or store the machine warmer.`,
        derivations: [freezing],
      },
      notes: [
        {
          level: 'danger',
          text: `The store can reach colder than any mixture of ${coolant.glycol} glycol protects with ${q(MARGIN_K, 'K')} to spare.`,
          act: `Bring it to ${percent(end.strength)}, or store the machine warmer.`,
        },
      ],
    };
  }
  return tooWeak(input, coolant, { base, freezeC, target, freezing });
}

function tooWeak(
  input: CoolantInput,
  coolant: Coolant,
  found: {
    base: Pick<CoolantPlan, 'needC' | 'strength' | 'targetStrength'>;
    freezeC: number;
    target: number;
    freezing: Derivation;
  },
): Draft {
  const { household, firstFrostInStore, machine } = input;
  const { base, freezeC, target, freezing } = found;
  const q = (value: number, unit: string) => formatQuantity(value, unit, household.units);
  const percent = (share: number) => `${(share * 100).toFixed(0)} %`;
  const { volumeL, refillStrength } = coolant;
  const drainableL = Math.min(volumeL, coolant.drainableL);
  const strength = coolant.strength!;
  const swap = drainAndReplace(volumeL, drainableL, strength, target, refillStrength);
  const reach = reachOfOneSwap(volumeL, drainableL, strength, Math.max(strength, refillStrength));
  const oneSwapRefill = strength + ((target - strength) * volumeL) / drainableL;
  const by = firstFrostInStore ? addDays(firstFrostInStore, -1) : machine.season.lastUse;
  const head = `${percent(strength)} freezes at ${q(freezeC, '°C')}, ${q(base.needC, '°C')} is needed (${percent(target)}).`;
  const text = swap
    ? `${head} ${swapText(swap, refillStrength, q)}`
    : `${head} A refill of ${percent(refillStrength)} cannot get there${
        refillStrength > strength ? ` (one draining reaches ${percent(reach)})` : ''
      }: ${
        oneSwapRefill <= 1
          ? `drain ${q(drainableL, 'L')} and refill with ${percent(oneSwapRefill)} or stronger.`
          : 'empty and flush the system, and fill it with the right mixture.'
      }`;
  return {
    plan: {
      ...base,
      freezeC,
      replaceL: swap?.totalL,
      swaps: swap?.swaps,
      enough: false,
      text,
      derivations: [freezing, swapDerivation(coolant, target, reach, swap)],
    },
    notes: [
      {
        level: 'danger',
        text: `The coolant freezes at ${q(freezeC, '°C')}; the store can reach ${q(input.designLowC, '°C')}.`,
        act: `Strengthen it by ${writtenDate(by, household.locale)}. ${swap ? swapText(swap, refillStrength, q) : 'See the coolant plan for the refill.'}`,
      },
    ],
  };
}

function swapText(swap: Swap, refill: number, q: (value: number, unit: string) => string): string {
  const strength = `${(refill * 100).toFixed(0)} %`;
  if (swap.swaps === 1) return `Drain ${q(swap.totalL, 'L')} and refill with ${strength}.`;
  const each = swap.each.map((litres) => q(litres, 'L')).join(', then ');
  return `One draining is not enough: drain and refill with ${strength} ${swap.swaps} times (${each}), running the engine warm in between.`;
}

function ageNotes(input: CoolantInput, ageDue: IsoDate | undefined): Note[] {
  const { machine, household } = input;
  const seasonEnd = addMonths(machine.season.firstUse, 12);
  if (!machine.cooling.coolant) return [];
  if (ageDue === undefined) {
    return [
      {
        level: 'note',
        text: 'Nobody knows when the coolant was last changed; its rust inhibitor wears out by age.',
        act: 'Write the date down at the next change.',
      },
    ];
  }
  if (ageDue >= seasonEnd) return [];
  return [
    {
      level: 'note',
      text: `The coolant is due by age on ${writtenDate(ageDue, household.locale)}, before or during next season.`,
      act: 'Change it at this lay-up, so that fresh inhibitor stands in the block over the rest.',
    },
  ];
}

/** A rest in summer says nothing of the winter that the machine works in. */
function coldUseNotes(input: CoolantInput): Note[] {
  if (input.machine.use !== 'snow') return [];
  return [
    {
      level: 'note',
      text: 'This plan protects over the rest; in its season this machine meets colder.',
      act: 'Test the coolant against the coldest day of use at start-up.',
    },
  ];
}
