import { DAYS_PER_YEAR, dayIndexOf } from '../climate/index.ts';
import { daysBetween } from '../dates.ts';
import type { Household, Machine, Place, Tyre } from '../household.ts';
import { SHORT_REST_DAYS } from '../rest-length.ts';
import type { Derivation, TyrePlan, Warning } from '../season-plan.ts';
import type { StoreYear } from '../storage/types.ts';
import { formatQuantity } from '../units/index.ts';
import { atmosphereKPa, LEAKAGE, pressureAt, shareLeft } from './pressure.ts';

export interface TyreInput {
  machine: Machine;
  place: Place;
  store: StoreYear;
  household: Household;
}

/** A standing machine is moved this often. */
export const MOVE_MONTHS = 3;
/** A tyre this old is looked at, and replaced at the higher age [years]. */
const AGE = {
  look: 6,
  replace: 10,
  source: 'BRMA (2001): unused tyres not into service after 6 years, replaced at 10',
};

/** The rest as the tyres see it. */
interface TyreRest {
  days: number;
  atmKPa: number;
  layUpC: number;
  startUpC: number;
  leftAtMiddle: number;
  leftAtEnd: number;
  meanC: number;
  lowestC: number;
  highestC: number;
}

/**
 * Plans the tyre pressures of one machine over its rest.
 * @param input - machine, place, the store's normal year, household
 * @returns one plan a tyre position (none for a machine without tyres) and the warnings
 * Source: gas law; Tire Sci. Technol. 13(1) 1985 for leakage; RMA TISB 23-4 for moving; each derivation names its own.
 */
export function planTyres(input: TyreInput): { plan: TyrePlan[]; warnings: Warning[] } {
  const { machine } = input;
  if (machine.tyres.length === 0) return { plan: [], warnings: [] };
  const rest = tyreRest(input);
  const parts = machine.tyres.map((tyre) => planOne(tyre, rest, input));
  const shared = standingNotes(rest, input);
  return {
    plan: parts.map((p) => p.plan),
    warnings: [...shared, ...together(parts)].map((n) => ({ ...n, machine: machine.id, about: 'tyres' })),
  };
}

type Note = Pick<Warning, 'level' | 'text' | 'act'>;

/** What holds for several tyres alike is said once, with all their positions. */
function together(parts: readonly { plan: TyrePlan; notes: readonly Note[] }[]): Note[] {
  const groups = new Map<string, Note & { of: string[] }>();
  for (const { plan, notes } of parts)
    for (const note of notes) {
      const key = JSON.stringify(note);
      const group = groups.get(key) ?? { ...note, of: [] };
      group.of.push(plan.position);
      groups.set(key, group);
    }
  return [...groups.values()].map(({ of, text, ...note }) => {
    const positions = [...new Set(of)];
    const said = positions.length < 2 ? positions[0] : `${positions.slice(0, -1).join(', ')} and ${positions.at(-1)}`;
    return { ...note, text: `Tyres ${said}: ${text}` };
  });
}

function tyreRest({ machine, place, store }: TyreInput): TyreRest {
  const { lastUse, firstUse } = machine.season;
  const days = daysBetween(lastUse, firstUse);
  if (!(days >= 1)) throw new RangeError(`found a rest from ${lastUse} to ${firstUse}, expected at least one day`);
  const first = dayIndexOf(lastUse);
  const index = (n: number) => (first + n) % DAYS_PER_YEAR;
  const means = Array.from({ length: days }, (_, n) => store.dayMeanC[index(n)]!);
  const span = Array.from({ length: Math.min(days, DAYS_PER_YEAR) }, (_, n) => index(n));
  return {
    days,
    atmKPa: atmosphereKPa(place.climate.elevationM),
    layUpC: store.dayMeanC[first]!,
    startUpC: store.dayMeanC[dayIndexOf(firstUse)]!,
    leftAtMiddle: shareLeft(means.slice(0, Math.round(days / 2))),
    leftAtEnd: shareLeft(means),
    meanC: means.reduce((a, b) => a + b, 0) / days,
    lowestC: Math.min(...span.map((d) => store.dayMinC[d]!)),
    highestC: Math.max(...span.map((d) => store.dayMaxC[d]!)),
  };
}

function planOne(tyre: Tyre, rest: TyreRest, input: TyreInput): { plan: TyrePlan; notes: Note[] } {
  const { machine, household } = input;
  const standsOnTyres = !machine.chassis.offGround;
  const raised = standsOnTyres && rest.days >= SHORT_REST_DAYS && tyre.sidewallMaxKPa !== undefined;
  const setKPa = raised ? Math.max(tyre.pressureKPa, tyre.sidewallMaxKPa!) : tyre.pressureKPa;
  // A tyre gives way: where its air would be under that outside, it stands flat.
  const later = (left: number, toC: number) => Math.max(0, pressureAt(setKPa * left, rest.layUpC, toC, rest.atmKPa));
  const expectedAtStartUpKPa = later(rest.leftAtEnd, rest.startUpC);
  const lookIn = lookInTemperatures(rest).map((temperatureC) => ({
    temperatureC,
    expectedKPa: later(rest.leftAtMiddle, temperatureC),
  }));
  const plan: TyrePlan = {
    position: tyre.position,
    count: tyre.count,
    normalKPa: tyre.pressureKPa,
    setKPa,
    expectedAtStartUpKPa,
    lookIn,
    standsOnTyres,
    moveEveryMonths: standsOnTyres && rest.days > MOVE_MONTHS * 30 ? MOVE_MONTHS : undefined,
    derivations: [
      setDerivation(tyre, setKPa, standsOnTyres, raised, rest),
      expectedDerivation(setKPa, expectedAtStartUpKPa, rest),
    ],
  };
  const q = (kPa: number) => formatQuantity(kPa, 'kPa', household);
  const coldest = later(rest.leftAtMiddle, rest.lowestC);
  const hottest = pressureAt(setKPa, rest.layUpC, rest.highestC, rest.atmKPa);
  const notes: Note[] = [];
  if (standsOnTyres && rest.days >= SHORT_REST_DAYS && tyre.sidewallMaxKPa === undefined) {
    notes.push({
      level: 'note',
      text: 'the maximum on the sidewall is not known, so the normal pressure is kept.',
      act: 'Read it off the sidewall and stay below it (sidewallMax in the machine’s file).',
    });
  }
  if (raised && hottest > setKPa * 1.1) {
    notes.push({
      level: 'note',
      text: `set to the sidewall maximum in the cool, they stand at ${q(hottest)} on the hottest day.`,
      act: `Set them ${q(hottest - setKPa)} lower; the maximum is meant for a cold tyre.`,
    });
  }
  if (coldest < tyre.pressureKPa / 2) {
    notes.push({
      level: 'warning',
      text: `in the coldest hour they stand at ${q(Math.max(0, coldest))}, less than half of normal, and the bead can let go.`,
      act: 'Take the weight off, or pump them up before the cold comes.',
    });
  }
  return { plan, notes: [...notes, ...ageNotes(tyre, machine)] };
}

/** Every 5 K over the store's range, every 10 K where that would be a long table. */
function lookInTemperatures(rest: TyreRest): number[] {
  const step = rest.highestC - rest.lowestC > 40 ? 10 : 5;
  const from = Math.floor(rest.lowestC / step) * step;
  const to = Math.ceil(rest.highestC / step) * step;
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
}

function standingNotes(rest: TyreRest, { machine }: TyreInput): Note[] {
  if (machine.chassis.offGround || rest.days < SHORT_REST_DAYS) return [];
  return [
    {
      level: 'note',
      text: 'The machine stands on its tyres over the rest.',
      act:
        rest.days > MOVE_MONTHS * 30
          ? `Better on a stand with the weight off; else move it every ${MOVE_MONTHS} months, so that it stands on another part.`
          : 'Better on a stand with the weight off.',
    },
  ];
}

function ageNotes(tyre: Tyre, machine: Machine): Note[] {
  if (tyre.madeYear === undefined) return [];
  const age = Number(machine.season.firstUse.slice(0, 4)) - tyre.madeYear;
  if (age >= AGE.replace) {
    return [
      {
        level: 'warning',
        text: `${age} years old at first use.`,
        act: `Replace them before first use (${AGE.source}).`,
      },
    ];
  }
  if (age >= AGE.look) {
    return [
      {
        level: 'note',
        text: `${age} years old at first use.`,
        act: `Look for cracks in the sidewall and between the blocks (${AGE.source}).`,
      },
    ];
  }
  return [];
}

function setDerivation(
  tyre: Tyre,
  setKPa: number,
  standsOnTyres: boolean,
  raised: boolean,
  rest: TyreRest,
): Derivation {
  return {
    method: 'tyres.set',
    equation:
      'the sidewall maximum where the machine stands on its tyres for four weeks or more, else the normal pressure',
    inputs: [
      { name: 'normal pressure', value: tyre.pressureKPa, unit: 'kPa' },
      {
        name: 'sidewall maximum',
        value: tyre.sidewallMaxKPa ?? 'not known',
        unit: tyre.sidewallMaxKPa === undefined ? '' : 'kPa',
      },
      { name: 'stands on its tyres', value: standsOnTyres ? 'yes' : 'no', unit: '' },
      { name: 'length of the rest', value: rest.days, unit: 'd' },
    ],
    result: { value: setKPa, unit: 'kPa' },
    sources: [
      'common practice',
      'RMA TISB 23-4 (as reproduced): unload, else keep the recommended pressure and move every 3 months',
    ],
    caveat: raised
      ? 'Sources disagree: the trade pumps a standing tyre up to the sidewall maximum against flat spots, the rubber makers keep the recommended pressure and move the machine. Set it back before first use.'
      : 'Gauge pressure, cold, at the store temperature of the lay-up day.',
  };
}

function expectedDerivation(setKPa: number, expected: number, rest: TyreRest): Derivation {
  return {
    method: 'tyres.expected',
    equation: 'p2 = (p1·L + patm)·T2/T1 − patm (kelvin), not under 0; L = exp(−Σ 1 %/month · 2^((T − 20)/11))',
    inputs: [
      { name: 'set at lay-up, p1', value: setKPa, unit: 'kPa' },
      { name: 'store on the lay-up day, T1', value: rest.layUpC, unit: '°C' },
      { name: 'store on the day of first use, T2', value: rest.startUpC, unit: '°C' },
      { name: 'share left after leaking, L', value: rest.leftAtEnd, unit: '' },
      { name: 'share left at the middle of the rest (look-in table)', value: rest.leftAtMiddle, unit: '' },
      { name: 'mean store temperature', value: rest.meanC, unit: '°C' },
      { name: 'air pressure at this height, patm', value: rest.atmKPa, unit: 'kPa' },
    ],
    result: { value: expected, unit: 'kPa' },
    sources: ['ideal gas law', LEAKAGE.source],
    caveat: LEAKAGE.caveat,
  };
}
