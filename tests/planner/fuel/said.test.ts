/** What is said of fuel, case by case: the rules of drain or fill at their borders, taps and bowls, warnings with their remedies. */
import { expect, test } from 'vitest';
import {
  adviseChoice,
  cansFor,
  keepingRow,
  lifeShare,
  useByWindow,
  verdictOn,
} from '../../../src/planner/fuel/index.ts';
import { localLimit } from '../../../src/planner/fuel/limits.ts';
import { planFuel } from '../../../src/planner/fuel/plan.ts';
import { tapText } from '../../../src/planner/fuel/tap.ts';
import type { Fuel, Household, Machine } from '../../../src/planner/household.ts';
import { assembly, fuel, household, job, machine, place, storeYear } from '../fluids/fixture.ts';

const TANK = assembly({});
const JOB = job({ name: 'Valves', assemblies: [] });
const CARE = { canL: 10, cans: 1, stabiliserDoseMLPerL: 4 };

function planned(
  own: Partial<Fuel> = {},
  over: {
    machine?: Partial<Machine>;
    home?: Partial<Household>;
    asOf?: string;
    highestStoreC?: number;
    /** On the last day of use, or another day. */
    done?: boolean | string | undefined;
    usedUp?: boolean;
    seenTo?: string | undefined;
  } = {},
) {
  return planFuel({
    machine: machine({ fuel: fuel(own), ...over.machine }),
    place: place(),
    household: household(over.home),
    store: storeYear(),
    lowestStoreC: -25,
    highestStoreC: over.highestStoreC ?? 20,
    asOf: over.asOf ?? '2026-10-01',
    doneOn: over.done === true ? '2026-10-25' : over.done || undefined,
    usedUp: over.usedUp,
    seenTo: over.seenTo,
  })!;
}
const warned = (...given: Parameters<typeof planned>) =>
  planned(...given).warnings.map(({ level, text, act, about, machine: id }) => {
    expect([about, id]).toEqual(['fuel', 'juniper']);
    return { level, text, act };
  });
const rest = (lastUse: string, firstUse: string) => ({ season: { lastUse, firstUse, proposed: false, reasons: [] } });

const FACTS = {
  delivery: 'carburettor' as const,
  bareSteel: false,
  ethanolPct: 5,
  premix: false,
  restDays: 167,
  stabiliser: true,
  untreated: 'dispose' as const,
  drainable: true,
};

/** The order of the rules and their borders: common practice, and published lives of petrol of 1–12 months. */
test.each<[string, Partial<Parameters<typeof adviseChoice>[0]>, string, RegExp]>([
  [
    'a job that takes the tank off, before all else',
    { tankJob: 'Valves', restDays: 5 },
    'drain',
    /^The tank comes off for "Valves", so it is drained\.$/,
  ],
  ['27 days', { restDays: 27, ethanolPct: 85 }, 'leave', /^The rest is 27 days: short enough/],
  ['28 days', { restDays: 28, ethanolPct: 85 }, 'drain', /^Fuel with 85 % ethanol is not left standing/],
  ['twelve months', { restDays: 365 }, 'fill', /^Fill and stabilise: a full tank/],
  [
    'a day more',
    { restDays: 366 },
    'drain',
    /^The rest is 12 months: longer than treated fuel keeps, so it would only have to be disposed of\.$/,
  ],
  [
    'the same in bare steel',
    { restDays: 366, bareSteel: true },
    'drain',
    / The bare steel tank is oiled or fogged inside and closed with a desiccant plug\.$/,
  ],
  ['E10 in a carburettor', { ethanolPct: 10 }, 'fill', /^Fill and stabilise/],
  [
    'E10.1 in a carburettor',
    { ethanolPct: 10.1 },
    'drain',
    /^Fuel with 10\.1 % ethanol is not left standing in a carburettor's tank and bowls\.$/,
  ],
  [
    'E85 and injection',
    { ethanolPct: 85, delivery: 'injection' },
    'fill',
    /^Injection: pump and injectors keep best wet with treated fuel, so fill and stabilise\.$/,
  ],
  ['bare steel', { bareSteel: true }, 'fill', /^A bare steel tank rusts when it stands empty: fill and stabilise\.$/],
  [
    'bare steel without stabiliser, fresh petrol lasts',
    { bareSteel: true, stabiliser: false, untreated: 'use' },
    'fill',
    /: fill with fresh petrol, which lasts this rest\.$/,
  ],
  [
    'bare steel without stabiliser, fresh petrol can be mixed',
    { bareSteel: true, stabiliser: false, untreated: 'mix' },
    'fill',
    /: fill with fresh petrol; it can be used mixed at first use\.$/,
  ],
  [
    'bare steel without stabiliser, fresh petrol is too old',
    { bareSteel: true, stabiliser: false },
    'drain',
    /^No stabiliser at hand, .* while it can still be used up, and the bare steel is oiled inside\.$/,
  ],
  [
    'bare steel without stabiliser that is not emptied at home',
    { bareSteel: true, stabiliser: false, drainable: false },
    'leave',
    / What a full tank held would only be thrown away\. The price: bare steel above the petrol can rust; /,
  ],
  [
    'injection without stabiliser, fresh petrol lasts',
    { delivery: 'injection', stabiliser: false, untreated: 'use', drainable: false },
    'fill',
    /^Injection: pump and injectors keep best wet, and fresh petrol lasts this rest, so fill\.$/,
  ],
  [
    'injection without stabiliser, fresh petrol can be mixed',
    { delivery: 'injection', stabiliser: false, untreated: 'mix', drainable: false },
    'leave',
    / What is left can be used at first use under two parts fresh petrol\.$/,
  ],
  [
    'no stabiliser, fresh petrol lasts',
    { stabiliser: false, untreated: 'use' },
    'fill',
    /^Fill: the rest is no longer than fresh fuel keeps\.$/,
  ],
  [
    'no stabiliser, fresh petrol can be mixed',
    { stabiliser: false, untreated: 'mix' },
    'leave',
    /: nothing is filled in, and the last rides use/,
  ],
  [
    'no stabiliser, fresh petrol is too old',
    { stabiliser: false },
    'drain',
    /^No stabiliser at hand, .* while it can still be used up\.$/,
  ],
  ['mixture, 91 days', { premix: true, restDays: 91 }, 'fill', /^Fill and stabilise/],
  ['mixture, 92 days', { premix: true, restDays: 92 }, 'drain', /^Two-stroke mixture in a tank that does not rust/],
])('%s', (_, facts, choice, reason) => {
  const advised = adviseChoice({ ...FACTS, ...facts });
  expect(advised.choice).toBe(choice);
  expect(advised.reason).toMatch(reason);
  expect(advised.source).not.toBe('');
});

const taps = (kind: 'vacuum' | 'manual', count: number) => ({ taps: { kind, count } });
const noTaps = { taps: null };

test.each<[Partial<Fuel>, 'fill' | 'drain', number, string]>([
  [noTaps, 'fill', 100, 'No fuel tap. After the last run, drain both float bowls.'],
  [taps('vacuum', 0), 'fill', 100, 'No fuel tap. After the last run, drain both float bowls.'],
  [{ ...noTaps, bowls: 1 }, 'fill', 28, 'No fuel tap. After the last run, drain the float bowl.'],
  [
    { ...taps('manual', 1), bowls: 1 },
    'fill',
    28,
    'Manual tap: OFF. After the last run, shut off and drain the float bowl.',
  ],
  [
    { ...taps('vacuum', 1), bowls: 1 },
    'fill',
    28,
    'Vacuum tap: leave at ON or RES, never at PRIME (PRIME lets fuel through with the engine off); a tap that has OFF: OFF. After the last run, drain the float bowl.',
  ],
  [{ ...noTaps, bowls: 4 }, 'fill', 27, 'No fuel tap. A rest this short leaves all four float bowls full.'],
  [{ ...noTaps, bowls: 6 }, 'drain', 100, 'No fuel tap. Drain all 6 float bowls.'],
  [{ ...noTaps, bowls: 3 }, 'drain', 100, 'No fuel tap. Drain all three float bowls.'],
  [{ ...noTaps, bowls: 0 }, 'drain', 100, 'No fuel tap. Run the carburettor dry.'],
  [{ ...noTaps, bowls: 0 }, 'fill', 100, 'No fuel tap.'],
  [
    { ...noTaps, delivery: 'injection' },
    'fill',
    100,
    'No fuel tap. Injection: nothing to drain, pump and injectors stay wet with treated fuel.',
  ],
  [
    { ...noTaps, delivery: 'injection' },
    'drain',
    100,
    'No fuel tap. Injection: pump, rail and injectors stay wet; do not run the pump dry.',
  ],
  [
    { ...taps('vacuum', 1), bowls: 0 },
    'fill',
    100,
    'Vacuum tap: leave at ON or RES, never at PRIME (PRIME lets fuel through with the engine off); a tap that has OFF: OFF.',
  ],
  [
    { ...taps('vacuum', 2), bowls: 0 },
    'fill',
    100,
    'Both vacuum taps: leave at ON or RES, never at PRIME (PRIME lets fuel through with the engine off); a tap that has OFF: OFF.',
  ],
  [
    { ...taps('vacuum', 1), bowls: 1 },
    'drain',
    100,
    'To drain, set to PRIME only while the fuel runs out. Vacuum tap: leave at ON or RES, never at PRIME (PRIME lets fuel through with the engine off); a tap that has OFF: OFF. Drain the float bowl.',
  ],
  [{ ...taps('manual', 1), bowls: 0 }, 'fill', 100, 'Manual tap: OFF.'],
  [{ ...taps('manual', 1), bowls: 1 }, 'drain', 100, 'Manual tap: open to drain, then OFF. Drain the float bowl.'],
  [
    { ...taps('manual', 2), bowls: 0 },
    'fill',
    100,
    '2 manual taps: both OFF; one left open feeds the bowls by itself.',
  ],
  [
    { ...taps('manual', 2), bowls: 2 },
    'drain',
    100,
    '2 manual taps: drain through both, one side of the tank does not empty through the other; then both OFF. Drain both float bowls.',
  ],
])('taps and bowls %j, %s over %d days', (own, choice, days, text) => {
  expect(tapText(fuel(own), choice, days)).toBe(text);
});

test('a full tank of treated fuel that lasts is warned of in no way', () => {
  expect(warned()).toEqual([]);
});

test('a choice against the rules stands, with the reason against it', () => {
  expect(planned({ choice: 'fill' }).plan.reason).toMatch(/^Chosen by you\. A bare steel tank rusts/);
  const filled = planned({ choice: 'fill', blend: 'E85', tankMaterial: 'plastic' });
  expect(filled.plan.reason).toMatch(/^Chosen by you; without a choice it would be "drain": Fuel with \d+ % ethanol/);
  expect(filled.warnings[0]).toMatchObject({
    level: 'warning',
    text: expect.stringMatching(/^You chose to fill\. Fuel with \d+ % ethanol/),
    act: 'Drain it, or take the reason away.',
  });
  expect(warned({ choice: 'drain' })).toContainEqual({
    level: 'note',
    text: 'You chose to drain. A bare steel tank rusts when it stands empty: fill and stabilise.',
    act: 'Fill it, unless you have a reason of your own.',
  });
});

test('a tank that would run over is drawn down, one that is filled less for the heat says how far', () => {
  const over = warned({ inTankL: { value: 17, low: 17, high: 17 } }, { highestStoreC: 60 });
  expect(over[0]).toMatchObject({
    level: 'warning',
    text: 'The tank is so full that it would run over at 60 °C in the store.',
    act: expect.stringMatching(/^Draw off \d\.\d L before the rest\.$/),
  });
  const less = warned({}, { highestStoreC: 60 });
  expect(less[0]).toMatchObject({
    level: 'note',
    text: expect.stringMatching(/^Filled to 9\d % only, so that it does not run over at 60 °C in the store\.$/),
    act: expect.stringMatching(/^Add \d\.\d L and no more\.$/),
  });
});

const BARE = { home: { fuelCare: { canL: 10, cans: 3 } } };
const PLASTIC = { tankMaterial: 'plastic' as const };
const CAR = { delivery: 'injection' as const, tankL: 60, taps: null };
const DOSE = 'say its dose: "Fuel stabiliser at hand" in the form, fuelCare.stabiliserDose in household.yaml';

// Untreated petrol in a vented tank is surely good for a calendar month, surely stale after three: 25 November, 25 January.
test('without stabiliser: what can still be bought, what becomes of the petrol, and nothing that is too late', () => {
  const text = 'No stabiliser at hand: untreated fuel does not last this rest (use by 25 January 2027).';
  const toCollection = 'At the start-up drain the tank, take the fuel to the local collection point, and fill fresh.';
  const car = (asOf: string, done = false) => warned(CAR, { ...BARE, asOf, done });
  expect(car('2026-10-25')).toEqual([
    {
      level: 'warning',
      text,
      act: `Get stabiliser by 25 October 2026, and ${DOSE}. Without it do not fill up. ${toCollection}`,
    },
  ]);
  expect(car('2026-10-26')).toEqual([
    {
      level: 'warning',
      text,
      act: `Get stabiliser now, if the petrol is still fresh, and ${DOSE}. Without it do not fill up. ${toCollection}`,
    },
  ]);
  // Three weeks before first use the start-up begins, on 20 March.
  const resting = [
    { level: 'warning', text: 'By first use the fuel is too old (use by 25 January 2027).', act: toCollection },
  ];
  expect(car('2026-10-26', true)).toEqual(resting);
  expect(car('2027-03-20')[0]!.act).toMatch(/^Get stabiliser now/);
  expect(car('2027-03-21')).toEqual(resting);
  expect(car('2027-04-10')).toEqual(resting);
  // The first use goes by, and nobody has said that the petrol was seen to: it is in the tank still.
  const stood = 'The fuel that stood in the tank is too old (use by 25 January 2027).';
  expect(car('2027-04-11')).toEqual([{ level: 'warning', text: stood, act: toCollection }]);
  expect(warned(CAR, { ...BARE, asOf: '2027-04-11', seenTo: '2027-04-10' })).toEqual([]);
  expect(warned(CAR, { ...BARE, asOf: '2027-03-30', seenTo: '2027-03-29' })).toEqual([]);
  const said = (days: string) =>
    warned(PLASTIC, { ...BARE, machine: rest('2026-10-25', days) }).filter(({ text: t }) => t.startsWith('No stab'));
  expect(said('2026-11-15')).toEqual([]);
  expect(said('2026-11-25')).toEqual([]);
  expect(said('2026-11-26').map(({ act }) => act)).toEqual([
    expect.stringMatching(/ do not fill up\. At the start-up mix it with at least two parts fresh fuel\.$/),
  ]);
  const steel = warned({}, { ...BARE, machine: rest('2026-10-25', '2027-01-10') });
  expect(steel[0]!.act).toMatch(/ Without it: at the start-up mix it with at least two parts fresh fuel\.$/);
});

test('a tank that is drained for want of stabiliser says what would spare it, as long as it can be bought', () => {
  const said = (asOf: string) =>
    warned(PLASTIC, { ...BARE, asOf }).filter(({ text }) => text.startsWith('With stabiliser'));
  expect(said('2026-10-25')).toEqual([
    {
      level: 'note',
      text: 'With stabiliser the petrol could stay in a full tank.',
      act: `Get some by 25 October 2026, and ${DOSE}; the plan then fills.`,
    },
  ]);
  expect(said('2026-10-26')).toEqual([]);
  // With stabiliser too, two-stroke mixture in a tank that does not rust is drained over a rest of more than three months.
  const mixture = { ...PLASTIC, premix: true };
  expect(planned(mixture).plan.choice).toBe('drain');
  expect(warned(mixture, BARE).filter(({ act }) => /fills|[Ss]tabiliser/.test(act))).toEqual([]);
});

// Drained within a month of draining (university extension: use within 30 days); untreated in its tank petrol is stale after three.
test('a tank that is drained late has its last day counted from the draining, and what is stale by then is taken away', () => {
  const { boughtOn: _, ...own } = { ...DRAIN, boughtOn: undefined };
  const at = (asOf: string, done?: string) => planned(own, { asOf, done, ...cans(2) });
  expect(at('2026-11-15').plan).toMatchObject({ drainedUseBy: '2026-11-25', drainedOld: undefined });
  expect(at('2026-12-01').plan).toMatchObject({ drainedUseBy: '2027-01-01', drainedOld: undefined });
  expect(at('2026-12-10', '2026-12-01').plan.drainedUseBy).toBe('2027-01-01');
  const texts = ({ warnings }: ReturnType<typeof at>) => warnings.flatMap(({ text, act }) => [text, act]).join('\n');
  expect(texts(at('2026-12-01'))).toMatch(/Use the drained fuel up by 1 January 2027/);
  // Three months from 25 October are over after 25 January: a month from 26 December it would be stale.
  expect(at('2026-12-25').plan).toMatchObject({ drainedUseBy: '2027-01-25', drainedOld: undefined });
  const old = at('2026-12-26');
  expect(old.plan).toMatchObject({ drainedUseBy: '2027-01-26', drainedOld: true, atFirstUse: { verdict: 'dispose' } });
  expect(texts(old)).not.toMatch(/was to be used up|Use the drained/);
  expect(texts(old)).toMatch(/too old to be used up when it is drained\.\nTake it to the local collection point/);
  // The start-up has begun, and for all the plan knows the petrol is still in the tank.
  expect(texts(at('2027-03-21'))).toMatch(
    /that is not ticked\.\nLook into the tank.*it is old: drain it before the start/,
  );
  const { plan: never } = at('2027-03-21');
  expect(never).toMatchObject({ drainedUseBy: undefined, drainedOld: undefined });
  expect(never.derivations.filter(({ result }) => result.value === undefined)).toEqual([]);
});

test('what nobody ticked is not taken for treated: stabiliser makes no old petrol fresh', () => {
  const told = (asOf: string, done?: boolean) =>
    warned({}, { asOf, done }).filter(({ text }) => /not ticked that the petrol was treated/.test(text));
  // Untreated it is surely good for one month from 25 October.
  expect(told('2026-11-25')).toEqual([]);
  expect(told('2026-11-26')[0]!.act).toMatch(/mix it with at least two parts fresh fuel/);
  expect(told('2027-01-26')[0]!.act).toMatch(/drain the tank before the first start/);
  expect(told('2027-01-26', true)).toEqual([]);
  expect(planned({}, { asOf: '2027-03-20' }).plan.doseML).toBeGreaterThan(0);
  expect(planned({}, { asOf: '2027-03-21' }).plan).toMatchObject({
    doseML: undefined,
    atFirstUse: { verdict: 'dispose' },
  });
});

// A third of a tank under two thirds fresh: two parts fresh on one part old, common practice.
test('a tank that is left low holds a third at the most, in what is told before as in what is told after', () => {
  const full = { choice: 'leave' as const, inTankL: { value: 12, low: 9, high: 15 } };
  expect(planned(full).plan.levelL).toBeCloseTo(17 / 3, 9);
  expect(planned(full, { done: true, asOf: '2026-12-01' }).plan.levelL).toBeCloseTo(17 / 3, 9);
  expect(planned({ ...full, inTankL: { value: 4, low: 3, high: 5 } }).plan.levelL).toBe(4);
  // A rest of a few weeks asks for no ride-down: what is in the tank stays.
  expect(planned(full, { machine: rest('2026-10-25', '2026-11-10') }).plan.levelL).toBe(12);
});

test('what is done is not advised again, and what it left is said as it stands', () => {
  const full = { inTankL: { value: 17, low: 17, high: 17 } };
  expect(warned({ premix: true, ...full }, { highestStoreC: 60, done: true })).toEqual([]);
  expect(planned().plan.settled).toBeUndefined();
  expect(planned({}, { done: true }).plan).toMatchObject({ settled: 'done', levelL: 0.95 * 17 });
  expect(planned({}, { asOf: '2027-03-20' }).plan.settled).toBeUndefined();
  expect(planned({}, { asOf: '2027-03-21' }).plan.settled).toBe('past');
  // Cans, the oil mist and the choice itself are no matter any more; the cans' content still is, until it is used up.
  const drained = { choice: 'drain' as const };
  const few = { home: { fuelCare: { canL: 10, cans: 0 } } };
  expect(warned(drained, few).length).toBeGreaterThan(2);
  expect(warned(drained, { ...few, done: true }).map(({ text }) => text)).toEqual([
    'Use the drained fuel up by 25 November 2026.',
  ]);
  expect(warned(drained, { ...few, done: true, usedUp: true })).toEqual([]);
});

test('a choice of one’s own between filling and leaving is followed, with what it means', () => {
  expect(planned({ choice: 'leave' }).plan).toMatchObject({ choice: 'leave', addL: 0, levelL: 17 / 3 });
  expect(warned({ choice: 'leave' })).toEqual([
    {
      level: 'warning',
      text: 'By first use the fuel is too old (use by 25 January 2027).',
      act: 'At the start-up drain the tank, take the fuel to the local collection point, and fill fresh.',
    },
  ]);
  expect(warned({ choice: 'drain', ...CAR }, BARE)).toContainEqual({
    level: 'note',
    text: expect.stringMatching(/^You chose to drain\. No stabiliser at hand/),
    act: 'Leave it in the tank, unless you have a reason of your own.',
  });
  const kept = warned({ choice: 'leave', blend: 'E85', ...PLASTIC });
  expect(kept[0]!.text).toMatch(/^You chose to leave the petrol in the tank\. Fuel with 85 % ethanol/);
});

test('a tank that must come off is still to be emptied when it was filled', () => {
  const assemblies = [{ ...TANK, opensFluid: 'fuel' as const }];
  const own = { assemblies, jobs: [{ ...JOB, assemblies: ['tank'] }], fuel: fuel({ choice: 'fill' }) };
  const said = (done: boolean) => warned({}, { machine: own, done }).map(({ text }) => text);
  expect(said(true)).toEqual(['You chose to fill. The tank comes off for "Valves", so it is drained.']);
  expect(said(false)).toEqual(said(true));
});

test('fuel that is past its age at first use says what becomes of it', () => {
  const old = warned({ choice: 'fill' }, { machine: rest('2026-10-25', '2027-11-10') });
  expect(old).toContainEqual({
    level: 'warning',
    text: 'By first use the fuel is too old (use by 25 October 2027).',
    act: 'At the start-up drain the tank, take the fuel to the local collection point, and fill fresh.',
  });
  const aging = warned({}, { machine: rest('2026-10-25', '2027-06-10') });
  expect(aging).toEqual([
    {
      level: 'note',
      text: 'By first use the fuel is past its surest age (25 April 2027).',
      act: 'Run the machine within the window, or mix with at least two parts fresh fuel.',
    },
  ]);
});

test('mixture is topped up with mixture, where anything is topped up', () => {
  const note = {
    level: 'note',
    text: 'This engine runs on two-stroke mixture.',
    act: 'Top up with mixture of the same ratio, never with plain petrol.',
  };
  expect(warned({ premix: true })).toContainEqual(note);
  expect(warned({ premix: true, inTankL: { value: 16.9, low: 16.9, high: 16.9 } })).not.toContainEqual(note);
  expect(warned()).not.toContainEqual(note);
});

const DRAIN = { choice: 'drain' as const, tankMaterial: 'plastic' as const };
const cans = (count: number, canL = 10) => ({ home: { fuelCare: { ...CARE, canL, cans: count } } });
const ofCans = (own: Partial<Fuel>, count: number, canL?: number) =>
  warned({ ...DRAIN, ...own }, cans(count, canL)).filter(({ text }) => /hand|reckoned in cans|needed/.test(text));

test('cans that are missing are counted, those that may be missing are told', () => {
  // 6 L in the tank, 12 L at the most, 0.2 L in line and bowls.
  expect(ofCans({}, 0)).toEqual([
    {
      level: 'note',
      text: '6.2 L are drained, reckoned in cans of 10.0 L.',
      act: 'Have 1 approved can ready, or ride the tank down first.',
    },
  ]);
  expect(ofCans({}, 1, 5)).toEqual([
    {
      level: 'warning',
      text: '6.2 L are drained, and one of 5.0 L is at hand.',
      act: 'Have 2 approved cans ready, or ride the tank down first.',
    },
  ]);
  expect(ofCans({}, 2, 2)).toEqual([
    {
      level: 'warning',
      text: '6.2 L are drained, and 2 of 2.0 L hold 4.0 L and are at hand.',
      act: 'Have 4 approved cans ready, or ride the tank down first.',
    },
  ]);
  expect(ofCans({}, 1)).toEqual([
    {
      level: 'note',
      text: 'If the tank holds as much as it can, 2 cans are needed; 1 is at hand.',
      act: 'Look into the tank before you begin.',
    },
  ]);
  expect(ofCans({}, 2)).toEqual([]);
  const empty = { delivery: 'injection' as const, inTankL: { value: 0, low: 0, high: 4 } };
  expect(ofCans(empty, 0)).toEqual([
    {
      level: 'note',
      text: 'If the tank holds as much as it can, 1 can is needed.',
      act: 'Look into the tank before you begin.',
    },
  ]);
});

test('an empty tank of bare steel is oiled, one that is lined or no steel is not', () => {
  const rust = (own: Partial<Fuel>) =>
    warned({ choice: 'drain', ...own }, cans(2)).filter(({ text }) => /rusts when it stands empty\.$/.test(text));
  expect(rust({})).toEqual([
    {
      level: 'warning',
      text: 'A bare steel tank rusts when it stands empty.',
      act: 'Coat the inside with oil mist, close it, and rinse it out before it is filled again.',
    },
  ]);
  expect(rust({ lined: true })).toEqual([]);
  expect(rust({ tankMaterial: 'plastic' })).toEqual([]);
});

test('more petrol than the place allows is warned of, from the first drop over the limit', () => {
  const full = (value: number) => ({
    ...DRAIN,
    delivery: 'injection' as const,
    tankL: 60,
    inTankL: { value, low: value, high: value },
  });
  const limits = (value: number, country?: string) =>
    warned(full(value), { home: { ...cans(9).home, country } }).filter(({ text }) => /allowed/.test(text));
  // Canada's model code: 30 L, as in the table of limits.
  expect(limits(30, 'CA')).toEqual([]);
  expect(limits(30.1, 'CA')).toEqual([
    {
      level: 'warning',
      text: 'More petrol than is allowed in cans without more ado (Canada, model code).',
      act: 'Ride the tank down first or use it up at once; check your local code.',
    },
  ]);
  expect(limits(55, 'NZ')).toEqual([]);
});

test('where nothing is known of a country, that is said; the tank itself is as a rule not counted', () => {
  expect(localLimit(undefined, 5)).toEqual({
    where: 'not stated',
    text: 'No figure for this country is known here. Check your local code: the fire authority, the landlord and the insurer can each set less.',
    exceeded: null,
  });
  expect(localLimit('NZ', 5).where).toBe('NZ');
  expect(localLimit('gb', undefined)).toMatchObject({
    where: 'United Kingdom',
    exceeded: null,
    text: expect.stringMatching(/the machine's own tank is as a rule not counted\.$/),
  });
  // Decimal signs: Unicode CLDR.
  expect(localLimit('US', 5, { units: 'metric', locale: 'de-DE' }).text).toMatch(/94,6 L .*18,9 L/);
  expect(localLimit('GB', 30).exceeded).toBe(false);
  expect(localLimit('GB', 30.01).exceeded).toBe(true);
});

test('drained fuel is used up within the month by whoever is in use, and warned of when that is over', () => {
  const use = (over: Parameters<typeof planned>[1] = {}, own: Partial<Fuel> = {}) =>
    warned({ ...DRAIN, ...own }, { ...over, home: { ...cans(2).home, ...over.home } }).filter(({ text }) =>
      /^(Use the|The) drained/.test(text),
    );
  expect(use()).toEqual([
    {
      level: 'note',
      text: 'Use the drained fuel up by 25 November 2026.',
      act: 'No other machine here is in use then: find a running engine that takes this blend, or take it to the local collection point.',
    },
  ]);
  expect(use({}, { premix: true })[0]!.act).toMatch(/: find a two-stroke that runs on mixture, or /);
  const other = machine({ id: 'otter', name: 'Otter', ...rest('2027-03-20', '2027-12-05') });
  expect(use({ home: { machines: [other] } })).toEqual([
    {
      level: 'note',
      text: 'Use the drained fuel up by 25 November 2026: Otter can take it.',
      act: 'Label the can with date and blend; do not keep it for the start-up.',
    },
  ]);
  const done = true;
  expect(use({ asOf: '2026-11-25', done })[0]!.level).toBe('note');
  expect(use({ asOf: '2026-11-26', done })[0]!.level).toBe('warning');
  expect(use({ asOf: '2027-04-09', done })[0]!.level).toBe('warning');
  expect(use({ asOf: '2027-04-09', done })[0]).toMatchObject({
    text: 'The drained fuel was to be used up by 25 November 2026.',
    act: 'What is left of it is old: take it to the local collection point; do not keep it for the start-up.',
  });
  expect(use({ asOf: '2027-04-10', done })).toEqual([]);
  expect(use({}, { delivery: 'injection', inTankL: { value: 0, low: 0, high: 0 } })).toEqual([]);
  // Bought a year before: stale in its can since spring.
  expect(warned({ ...DRAIN, boughtOn: '2025-10-25' }, cans(2))).toContainEqual({
    level: 'warning',
    text: 'The fuel is too old to be used up when it is drained.',
    act: 'Take it to the local collection point.',
  });
});

test('fuel may be used up to the last day of its window, and a warm store shortens it', () => {
  const window = { earliest: '2027-01-10', latest: '2027-04-10' };
  expect(['2027-01-10', '2027-01-11', '2027-04-10', '2027-04-11'].map((day) => verdictOn(day, window))).toEqual([
    'use',
    'mix',
    'mix',
    'dispose',
  ]);
  // Opened can: 6 months at 20 °C, 3 months at 30 °C (fact sheet of an oil company).
  expect(useByWindow('2026-01-15', keepingRow('can'), 20)).toEqual({ earliest: '2026-04-15', latest: '2026-07-15' });
  expect(useByWindow('2026-01-15', keepingRow('can'), 30).latest).toBe('2026-04-15');
  expect(lifeShare(-20)).toBe(1);
  expect(() => lifeShare(121)).toThrow(/found 121 °C, expected −90 to 120 °C/);
  expect(() => lifeShare(-91)).toThrow(/found -91 °C/);
  expect([lifeShare(70) > 0, lifeShare(-90)]).toEqual([true, 1]);
  expect(() => keepingRow('jar' as never)).toThrow(
    'container: found "jar", expected one of tank-untreated, tank-treated, can',
  );
});

test('cans hold their marked volume, and nonsense is refused', () => {
  expect([cansFor(0, 5), cansFor(5, 5), cansFor(5.001, 5), cansFor(20, 5)]).toEqual([0, 1, 2, 4]);
  for (const [litres, canL] of [
    [-1, 5],
    [5, 0],
    [Number.NaN, 5],
  ] as const)
    expect(() => cansFor(litres, canL)).toThrow(/^cans: found .* expected litres of 0 or more and a can over 0 L$/);
});

test('what the tank of spring needs is said with the litres to draw down to', () => {
  const text = (own: Partial<Fuel>, firstUse: string) =>
    planned(own, { machine: rest('2026-10-25', firstUse), ...cans(2) }).plan.atFirstUse;
  expect(text({}, '2027-04-10')).toEqual({ verdict: 'use', text: 'Within its age, use it.' });
  // 95 % of 17 L is 16.15 L; a third of it 5.4 L, on which two parts fresh go.
  expect(text({}, '2027-06-10')).toEqual({
    verdict: 'mix',
    text: 'Past its surest age. Clear and not sour, it can be used mixed with at least 2 parts fresh fuel: draw the tank down to 5.4 L and fill up; what is drawn off goes into other engines the same way.',
  });
  // Drained petrol is used up within a month, by 25 November: it is not kept for the start-up, whatever a can would keep.
  expect(text(DRAIN, '2026-11-25')).toEqual({
    verdict: 'use',
    text: 'Fill with fresh fuel. What is left in the cans is within its age: use it.',
  });
  expect(text(DRAIN, '2026-11-26')).toEqual({
    verdict: 'dispose',
    text: 'Fill with fresh fuel. What was drained is not kept for it: what is left of it goes to the local collection point, never onto the ground or into a drain.',
  });
});

test('petrol that is not seen to ages on after the first use', () => {
  // Treated on 25 October it is surely good for six months, surely stale after twelve.
  const on = (asOf: string, seenTo?: string) => planned({}, { asOf, seenTo, done: true }).plan.atFirstUse.verdict;
  expect([on('2026-11-01'), on('2027-04-25'), on('2027-04-26'), on('2027-10-26')]).toEqual([
    'use',
    'use',
    'mix',
    'dispose',
  ]);
  expect([on('2027-10-26', '2027-04-12'), on('2027-10-26', '2027-03-30')]).toEqual(['use', 'use']);
  expect(warned({}, { asOf: '2027-04-26', done: true })).toEqual([
    {
      level: 'note',
      text: 'The fuel that stood in the tank is past its surest age (25 April 2027).',
      act: 'At the start-up mix it with at least two parts fresh fuel.',
    },
  ]);
});
