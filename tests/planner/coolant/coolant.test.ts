import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  drainAndReplace,
  freezingPointC,
  planCoolant,
  reachOfOneSwap,
  strengthFor,
  tableEnd,
} from '../../../src/planner/coolant/index.ts';
import type { Machine } from '../../../src/planner/household.ts';
import { coolant, household, machine, place } from '../fluids/fixture.ts';

type Coolant = Parameters<typeof coolant>[0];

function plan(
  over: Coolant,
  input: {
    designLowC?: number;
    firstFrostInStore?: string | undefined;
    asOf?: string;
    machine?: Partial<Machine>;
  } = {},
) {
  const { machine: changed, asOf = '2026-10-01' } = input;
  const { designLowC, firstFrostInStore } = { designLowC: -25, firstFrostInStore: '2026-11-02', ...input };
  const rest = {
    designLowC,
    outdoorLowC: designLowC,
    firstFrost: firstFrostInStore,
    firstColdOf: () => firstFrostInStore,
  };
  const result = planCoolant({
    machine: machine({ cooling: { kind: 'liquid', coolant: coolant(over) }, ...changed }),
    place: place(),
    household: household(),
    rest,
    ahead: rest,
    asOf,
  });
  if (!result) throw new Error('a liquid-cooled machine gives a plan');
  return result;
}

test('strong enough coolant asks for nothing', () => {
  const { plan: p, warnings } = plan({ strength: 0.5, lastChanged: '2025-10-01' });
  expect(p).toMatchObject({ needC: -30, enough: true, replaceL: 0, swaps: 0 });
  expect(p.freezeC).toBeLessThan(-30);
  expect(warnings).toEqual([]);
});

test('weak coolant: the litres replaced bring it to the strength that is needed', () => {
  const { plan: p, warnings } = plan({ strength: 0.35 });
  expect(p.enough).toBe(false);
  expect(p.swaps).toBe(1);
  const after = 0.35 + ((1 - 0.35) * p.replaceL!) / 2.5;
  expect(freezingPointC('ethylene', after)).toBeCloseTo(-30, 3);
  expect(warnings.some((w) => w.level === 'danger' && w.text.includes('freezes'))).toBe(true);
});

test('one draining that is not enough is said, with each of the drainings', () => {
  const { plan: p } = plan({ strength: 0.1, drainableL: 1, refillStrength: 0.7 });
  expect(p.swaps).toBeGreaterThan(1);
  expect(p.text).toContain('One draining is not enough');
});

test('a ready-mixed refill that cannot reach the strength says what would', () => {
  const { plan: p } = plan({ strength: 0.3, refillStrength: 0.4 });
  expect(p.replaceL).toBeUndefined();
  expect(p.text).toMatch(/cannot get there.*refill with \d+ %/);
  const weaker = plan({ strength: 0.3, refillStrength: 0.2 });
  expect(weaker.plan.text).toContain('cannot get there');
});

test('a cold that no mixture reaches is not promised', () => {
  const { plan: p, warnings } = plan({ strength: 0.5 }, { designLowC: -50 });
  expect(p.targetStrength).toBe(tableEnd('ethylene').strength);
  expect(p.enough).toBe(false);
  expect(warnings.some((w) => w.act.includes('warmer'))).toBe(true);
});

test('concentrate is not taken for protection', () => {
  const { plan: p } = plan({ strength: 0.95 });
  expect(p.freezeC).toBeUndefined();
  expect(p.enough).toBeNull();
  expect(p.text).toContain('Thin it');
});

test('the strong mixture of a snow machine protects as the end of the table does', () => {
  const { plan: p } = plan({ strength: 0.6 });
  expect(p.freezeC).toBe(tableEnd('ethylene').freezeC);
  expect(p.enough).toBe(true);
});

test('unknown strength becomes a dated test before water can freeze', () => {
  const { plan: p, warnings } = plan({ strength: undefined });
  expect(p.testBy).toBe('2026-11-01');
  expect(p.freezeC).toBeUndefined();
  expect(p.enough).toBeNull();
  expect(warnings.some((w) => w.level === 'warning' && w.act.includes('1 November 2026'))).toBe(true);
});

test('a test in a cold that no mixture reaches names the strongest there is', () => {
  expect(plan({ strength: undefined }, { designLowC: -45 }).plan.text).toMatch(/No mixture.*58 %, freezes at −48 °C/);
});

test('a test that is overdue while the machine rests is a danger', () => {
  const { warnings } = plan({ strength: undefined }, { asOf: '2026-12-01' });
  expect(warnings.some((w) => w.level === 'danger' && w.act.startsWith('Test it now'))).toBe(true);
});

test('a store that never freezes asks for no dated test', () => {
  const { plan: p } = plan({ strength: undefined }, { designLowC: 4, firstFrostInStore: undefined });
  expect(p.testBy).toBeUndefined();
  expect(p.text).toContain('nothing freezes');
});

test('a liquid-cooled machine of which nothing is known is treated as unknown strength', () => {
  const { plan: p } = plan({}, { machine: { cooling: { kind: 'liquid' } } });
  expect(p.testBy).toBe('2026-11-01');
});

test.each(['air', 'oil', 'none'] as const)('a machine cooled by %s has no coolant plan', (kind) => {
  const rest = { designLowC: -25, outdoorLowC: -25, firstColdOf: () => undefined };
  const input = { place: place(), household: household(), rest, ahead: rest, asOf: '2026-10-01' };
  expect(planCoolant({ ...input, machine: machine({ cooling: { kind } }) })).toBeUndefined();
});

test('coolant due by age before or during next season is named', () => {
  const { plan: p, warnings } = plan({ strength: 0.5, lastChanged: '2023-06-01', lifeYears: 4 });
  expect(p.ageDue).toBe('2027-06-01');
  expect(warnings.some((w) => w.text.includes('1 June 2027'))).toBe(true);
  expect(plan({ strength: 0.5, lastChanged: '2026-09-01', lifeYears: 5 }).warnings).toEqual([]);
});

test('a snow machine is told that its own winter is colder than its rest', () => {
  const { warnings } = plan({ strength: 0.3 }, { designLowC: 2, machine: { use: 'snow' } });
  expect(warnings.some((w) => w.text.includes('in its season'))).toBe(true);
});

test.each(['ethylene', 'propylene'] as const)(
  '%s glycol: strength and freezing point are each other’s inverse',
  (glycol) => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: tableEnd(glycol).strength, noNaN: true }), (strength) => {
        expect(strengthFor(glycol, freezingPointC(glycol, strength))).toBeCloseTo(strength, 6);
      }),
    );
    expect(strengthFor(glycol, 3)).toBe(0);
  },
);

test('more glycol never freezes earlier, within the table', () => {
  for (const glycol of ['ethylene', 'propylene'] as const) {
    const end = tableEnd(glycol).strength;
    for (let s = 0.001; s <= end; s += 0.001) {
      expect(freezingPointC(glycol, s)).toBeLessThan(freezingPointC(glycol, s - 0.001));
    }
  }
});

test('the drainings of a swap keep the balance of glycol', () => {
  const share = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(
      share(1, 20),
      share(0.1, 1),
      share(0, 0.6),
      share(0, 0.6),
      share(0.3, 1),
      (volumeL, part, now, target, refill) => {
        const swap = drainAndReplace(volumeL, volumeL * part, now, target, refill);
        if (!swap) return;
        const after = swap.each.reduce((c, litres) => c + ((refill - c) * litres) / volumeL, now);
        expect(after).toBeCloseTo(Math.max(now, target), 6);
        expect(Math.max(0, ...swap.each)).toBeLessThanOrEqual(volumeL * part * (1 + 1e-6));
      },
    ),
  );
});

test('nonsense is refused in words', () => {
  expect(() => freezingPointC('ethylene', Number.NaN)).toThrow(/volume fraction/);
  expect(() => freezingPointC('ethylene', 0.9)).toThrow(/table/);
  expect(() => drainAndReplace(2, 3, 0.3, 0.5, 1)).toThrow(/drainable/);
  expect(() => plan({}, { designLowC: Number.NaN })).toThrow(/design low/);
});

test('every printed figure of a coolant plan has its derivation with a source', () => {
  const { plan: p } = plan({ strength: 0.35, lastChanged: '2024-01-01' });
  const results = p.derivations.map((d) => d.result.value);
  for (const figure of [p.needC, p.freezeC, p.replaceL, p.ageDue]) expect(results).toContain(figure);
  expect(p.derivations.filter((d) => d.sources.length === 0 || d.inputs.length === 0)).toEqual([]);
});

test('strengths, volumes and temperatures that cannot be are refused on either side', () => {
  for (const share of [-0.01, 1.01, Number.NaN]) {
    expect(() => freezingPointC('ethylene', share)).toThrow(RangeError);
    expect(() => drainAndReplace(3, 2, share, 0.5, 1)).toThrow(/volume fraction of 0 to 1/);
    expect(() => drainAndReplace(3, 2, 0.3, share, 1)).toThrow(/volume fraction of 0 to 1/);
    expect(() => drainAndReplace(3, 2, 0.3, 0.5, share)).toThrow(/volume fraction of 0 to 1/);
  }
  for (const [volume, drained] of [
    [0, 0],
    [3, 0],
    [-3, -2],
    [3, 3.1],
    [Number.NaN, 1],
  ] as const)
    expect(() => drainAndReplace(volume, drained, 0.3, 0.5, 1)).toThrow(/no more than all/);
  for (const t of [-274, Number.NaN]) expect(() => strengthFor('ethylene', t)).toThrow(/expected a temperature/);
});

test('one draining reaches what the glycol that stays and the glycol that comes make together', () => {
  // 1 L of 3 L stays with 20 %, 2 L come with 80 %: 1.8 L of glycol in 3 L.
  expect(reachOfOneSwap(3, 2, 0.2, 0.8)).toBeCloseTo(1.8 / 3, 12);
  expect(reachOfOneSwap(3, 3, 0.2, 0.8)).toBeCloseTo(0.8, 12);
});

test('a refill that is no stronger than what is aimed at reaches it only where all is drained', () => {
  expect(drainAndReplace(3, 2, 0.2, 0.5, 0.5)).toBeUndefined();
  expect(drainAndReplace(3, 3, 0.2, 0.5, 0.5)).toMatchObject({ totalL: 3, swaps: 1 });
  expect(drainAndReplace(3, 2, 0.2, 0.5, 0.2)).toBeUndefined();
  expect(drainAndReplace(3, 2, 0.5, 0.5, 1)).toEqual({ totalL: 0, swaps: 0, each: [] });
});
