import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BLENDS, planFuel, volumeCorrection } from '../../../src/planner/fuel/index.ts';
import type { Household, Machine } from '../../../src/planner/household.ts';
import type { StoreYear } from '../../../src/planner/storage/types.ts';
import { assembly, fuel, household, job, machine, place, storeYear } from '../fluids/fixture.ts';
import { library } from '../tasks/library.ts';

function plan(
  m: Machine,
  over: { household?: Household; store?: StoreYear; lowestStoreC?: number; highestStoreC?: number; asOf?: string } = {},
) {
  const result = planFuel({
    machine: m,
    place: place(),
    household: household(),
    store: storeYear(),
    lowestStoreC: -25,
    highestStoreC: 20,
    asOf: '2026-10-01',
    ...over,
  });
  if (!result) throw new Error('a machine with fuel gives a plan');
  return result;
}
const noStabiliser = household({ fuelCare: { canL: 10, cans: 1 } });
const rest = (lastUse: string, firstUse: string) => ({ season: { lastUse, firstUse, proposed: false, reasons: [] } });

describe('drain or fill', () => {
  test('a bare steel tank is filled to 95 % and every litre in it is dosed', () => {
    const { plan: p } = plan(machine());
    expect(p.choice).toBe('fill');
    expect(p.addL).toBeCloseTo(0.95 * 17 - 6, 9);
    expect(p.drawOffL).toBeUndefined();
    expect(p.doseML).toBeCloseTo(0.95 * 17 * 4, 9);
    expect(p.runMinutes).toBeCloseTo((60 * 0.2) / 1, 9);
    expect(p.drainedL).toBeUndefined();
  });

  test('the tank comes off for a planned job, so it is drained, and the job is named', () => {
    const withJob = machine({ assemblies: [assembly({})], jobs: [job({})] });
    const { plan: p } = plan(withJob);
    expect(p.choice).toBe('drain');
    expect(p.reason).toContain('Valve clearances');
  });

  test('a tank that hides the part that the job is on counts too', () => {
    const hidden = machine({
      assemblies: [
        assembly({ id: 'petrol-cell', opensFluid: 'fuel' }),
        assembly({ id: 'airbox', name: 'Airbox', behind: ['petrol-cell'] }),
      ],
      jobs: [job({ assemblies: ['airbox'] })],
    });
    expect(plan(hidden).plan.choice).toBe('drain');
  });

  test('a job already done, or one on the oil tank, leaves the fuel in', () => {
    expect(plan(machine({ assemblies: [assembly({})], jobs: [job({ done: true })] })).plan.choice).toBe('fill');
    const oil = machine({
      assemblies: [assembly({ id: 'oil-tank', name: 'Oil tank' })],
      jobs: [job({ assemblies: ['oil-tank'] })],
    });
    expect(plan(oil).plan.choice).toBe('fill');
  });

  test('three weeks ask for neither draining nor stabiliser', () => {
    const { plan: p, warnings } = plan(machine(rest('2026-10-25', '2026-11-15')));
    expect(p.choice).toBe('leave');
    expect(p.doseML).toBeUndefined();
    expect(p.addL).toBe(0);
    expect(p.atFirstUse.verdict).toBe('use');
    expect(p.tap).toContain('leaves both float bowls full');
    expect(warnings).toEqual([]);
  });

  test('three years outlive any fuel: it is drained and a bare steel tank is oiled', () => {
    const { plan: p, warnings } = plan(machine(rest('2026-10-25', '2029-10-20')));
    expect(p.choice).toBe('drain');
    expect(p.reason).toContain('36 months');
    expect(warnings.some((w) => w.text.includes('bare steel'))).toBe(true);
  });

  // Untreated petrol in a vented tank keeps one to three months; this rest is five and a half.
  test('without stabiliser nothing is filled that would be thrown away: small tanks are drained, others left low', () => {
    const bare = (own: Partial<NonNullable<Machine['fuel']>>) =>
      plan(machine({ fuel: fuel(own) }), { household: noStabiliser });
    expect(bare({ tankMaterial: 'plastic' }).plan.choice).toBe('drain');
    const steel = bare({});
    expect(steel.plan).toMatchObject({ choice: 'drain', addL: undefined, doseML: undefined });
    expect(steel.plan.reason).toMatch(/the bare steel is oiled inside\.$/);
    const car = bare({ delivery: 'injection', tankL: 60, inTankL: { value: 30, low: 10, high: 57 }, taps: null });
    // The last rides use it down to a third of 60 L.
    expect(car.plan).toMatchObject({ choice: 'leave', addL: 0, levelL: 20, doseML: undefined, runMinutes: undefined });
    expect(car.plan.atFirstUse).toMatchObject({
      verdict: 'dispose',
      text: 'Too old: drain the tank, take the fuel to the local collection point, never onto the ground or into a drain, and fill with fresh.',
    });
    const tractor = { tankL: 90, taps: { kind: 'manual' as const, count: 1 } };
    expect(bare(tractor).plan.choice).toBe('drain');
    expect(bare({ tankL: 25, taps: null }).plan.choice).toBe('drain');
    expect(bare({ tankL: 25.1, taps: null }).plan.choice).toBe('leave');
  });

  // Two parts fresh go on one part old: a third of 95 % of 17 L is 5.4 L, and 4 L want 8 L.
  test('without stabiliser over two months the tank is left low, so that fresh petrol fits on it', () => {
    const two = (litres: number, own: Partial<NonNullable<Machine['fuel']>> = {}) =>
      plan(
        machine({
          ...rest('2026-10-25', '2026-12-25'),
          fuel: fuel({ tankMaterial: 'plastic', inTankL: { value: litres, low: litres, high: litres }, ...own }),
        }),
        { household: noStabiliser },
      ).plan;
    expect(two(4)).toMatchObject({ choice: 'leave', levelL: 4, atFirstUse: { verdict: 'mix' } });
    expect(two(4).atFirstUse.text).toMatch(/fresh fuel: fill in 8\.0 L or more\.$/);
    expect(two(6).atFirstUse.text).toMatch(/: draw the tank down to 5\.4 L and fill up; /);
    // Bare steel is kept from rust, and the petrol is not lost: it is mixed at first use.
    expect(two(4, { tankMaterial: 'steel' })).toMatchObject({ choice: 'fill', atFirstUse: { verdict: 'mix' } });
  });

  test("the user's choice goes before the rules, and the plan says what they would have been", () => {
    const chosen = plan(machine({ fuel: fuel({ choice: 'drain' }) }));
    expect(chosen.plan.choice).toBe('drain');
    expect(chosen.plan.reason).toContain('without a choice it would be "fill"');
    const against = plan(machine({ fuel: fuel({ choice: 'fill' }), assemblies: [assembly({})], jobs: [job({})] }));
    expect(against.plan.choice).toBe('fill');
    expect(against.warnings.some((w) => w.level === 'warning' && w.text.includes('You chose to fill'))).toBe(true);
  });

  test('an electric machine and one without fuel have no fuel plan', () => {
    const input = {
      place: place(),
      household: household(),
      store: storeYear(),
      lowestStoreC: -20,
      highestStoreC: 20,
      asOf: '2026-10-01',
    };
    expect(planFuel({ ...input, machine: machine({ fuel: undefined }) })).toBeUndefined();
    const electric = machine({ engine: { ...machine().engine, cycle: 'electric' } });
    expect(planFuel({ ...input, machine: electric })).toBeUndefined();
  });
});

describe('swelling', () => {
  test('a tank filled on a cold day is filled less, so that the hottest day brings it to the brim and no further', () => {
    const cold = machine({
      ...rest('2026-01-15', '2026-10-15'),
      fuel: fuel({ inTankL: { value: 2, low: 1, high: 4 } }),
    });
    const { plan: p, warnings } = plan(cold, { store: storeYear(0, 20), highestStoreC: 42, asOf: '2026-01-10' });
    expect(p.fullAtHottestPct).toBeLessThanOrEqual(100 + 1e-9);
    expect(2 + p.addL!).toBeLessThan(0.95 * 17);
    const swelling = volumeCorrection(-20, 745) / volumeCorrection(42, 745);
    expect(p.fullAtHottestPct).toBeCloseTo((100 * (2 + p.addL!) * swelling) / 17, 2);
    expect(warnings.some((w) => w.text.includes('run over'))).toBe(true);
  });

  test('a brimful tank is drawn down first', () => {
    const full = machine({
      ...rest('2026-03-15', '2026-11-15'),
      fuel: fuel({ inTankL: { value: 17, low: 16, high: 17 } }),
    });
    const { plan: p, warnings } = plan(full, { highestStoreC: 35 });
    expect(p.addL).toBe(0);
    expect(p.drawOffL).toBeCloseTo(17 - p.levelL, 9);
    expect(p.drawOffL).toBeGreaterThan(0);
    expect(p.fullAtHottestPct).toBeLessThanOrEqual(100 + 1e-9);
    expect(warnings.some((w) => w.act.includes('Draw off'))).toBe(true);
  });
});

test('whatever the tank, its content and the store: never over the brim, never less than nothing', () => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(
      between(2, 80),
      between(0, 1),
      between(-15, 15),
      between(0, 20),
      between(0, 25),
      between(660, 785),
      (tankL, part, meanC, amplitude, above, densityKgM3) => {
        const litres = tankL * part;
        const m = machine({
          fuel: fuel({ tankL, inTankL: { value: litres, low: 0, high: tankL }, densityKgM3, choice: 'fill' }),
        });
        const { plan: p } = plan(m, { store: storeYear(meanC, amplitude), highestStoreC: meanC + amplitude + above });
        expect(p.fullAtHottestPct).toBeLessThanOrEqual(100 + 1e-9);
        expect(p.addL).toBeGreaterThanOrEqual(0);
        expect(litres + p.addL!).toBeLessThanOrEqual(tankL * (1 + 1e-9));
        expect(p.waterToleranceML).toBeGreaterThan(0);
        expect(Number.isFinite(p.breathingWaterML)).toBe(true);
      },
    ),
    { numRuns: 60 },
  );
});

describe('taps and bowls', () => {
  test('a vacuum tap is left at ON or RES and never at PRIME', () => {
    expect(plan(machine()).plan.tap).toMatch(/ON or RES, never at PRIME/);
    expect(plan(machine()).plan.tap).toContain('drain both float bowls');
  });

  test('two manual taps are both shut, and both drained', () => {
    const two = fuel({ taps: { kind: 'manual', count: 2 } });
    expect(plan(machine({ fuel: two })).plan.tap).toMatch(/2 manual taps: both OFF/);
    expect(plan(machine({ fuel: { ...two, choice: 'drain' } })).plan.tap).toMatch(/drain through both/);
  });

  test('a vacuum tap needs PRIME to drain, and comes back to ON', () => {
    expect(plan(machine({ fuel: fuel({ choice: 'drain' }) })).plan.tap).toMatch(
      /PRIME only while the fuel runs out.*leave at ON/,
    );
  });

  test('an injected machine has neither tap nor bowl', () => {
    const injected = fuel({ delivery: 'injection', taps: null, bowls: 0 });
    expect(plan(machine({ fuel: injected })).plan.tap).toContain('No fuel tap');
    expect(plan(machine({ fuel: injected })).plan.tap).not.toContain('float bowl');
  });
});

describe('water', () => {
  test.each(BLENDS)('$blend holds less water in the cold', ({ blend }) => {
    const m = machine({ fuel: fuel({ blend, choice: 'fill' }) });
    const cold = plan(m, { lowestStoreC: -30 }).plan.waterToleranceML;
    const mild = plan(m, { lowestStoreC: 0 }).plan.waterToleranceML;
    expect(cold).toBeGreaterThan(0);
    expect(cold).toBeLessThan(mild);
  });

  test('breathing alone does not separate a full tank of E10 over a winter', () => {
    const { plan: p, warnings } = plan(machine());
    expect(p.breathingWaterML).toBeGreaterThan(0);
    expect(p.breathingWaterML).toBeLessThan(p.waterToleranceML / 5);
    expect(warnings.filter((w) => w.text.includes('water'))).toEqual([]);
  });

  test('petrol without ethanol can drop a little water, and the plan says where to look', () => {
    const { plan: p, warnings } = plan(machine({ fuel: fuel({ blend: 'E0' }) }), { store: storeYear(3, 15, 25, 900) });
    expect(p.breathingWaterML).toBeGreaterThan(p.waterToleranceML);
    expect(warnings.some((w) => w.level === 'note' && w.act.includes('filter'))).toBe(true);
  });

  test('twice the rest breathes in about twice the water in a store that is the same all year', () => {
    const still = storeYear(10, 0);
    const one = plan(machine(rest('2026-10-25', '2027-04-10')), { store: still }).plan.breathingWaterML;
    const two = plan(machine(rest('2026-10-25', '2027-09-24')), { store: still }).plan.breathingWaterML;
    expect(two / one).toBeCloseTo(2, 6);
  });
});

describe('age', () => {
  test('a winter on treated fuel ends within the window', () => {
    const { plan: p } = plan(machine());
    expect(p.useBy).toEqual({ earliest: '2027-04-25', latest: '2027-10-25' });
    expect(p.atFirstUse.verdict).toBe('use');
  });

  test('old fuel that is topped up by less than two parts keeps its own date', () => {
    const old = fuel({ inTankL: { value: 10, low: 9, high: 11 }, boughtOn: '2026-05-01' });
    const { plan: p } = plan(machine({ fuel: old }));
    expect(p.useBy.earliest).toBe('2026-11-01');
    expect(p.atFirstUse.verdict).toBe('mix');
    expect(p.atFirstUse.text).toContain('down to 5.4 L');
    const low = fuel({ inTankL: { value: 3, low: 2, high: 4 }, boughtOn: '2026-05-01' });
    expect(plan(machine({ fuel: low })).plan.useBy.earliest).toBe('2027-04-25');
  });

  test('a hot store halves the life', () => {
    const hot = plan(machine(rest('2026-10-25', '2027-01-20')), { store: storeYear(30, 0), highestStoreC: 36 });
    expect(hot.plan.useBy.earliest).toBe('2027-01-25');
  });

  test('a choice to fill for three years ends at the collection point', () => {
    const kept = machine({ ...rest('2026-10-25', '2029-10-20'), fuel: fuel({ choice: 'fill' }) });
    const { plan: p, warnings } = plan(kept);
    expect(p.atFirstUse.verdict).toBe('dispose');
    expect(p.atFirstUse.text).toContain('local collection point');
    expect(warnings.some((w) => w.text.includes('too old'))).toBe(true);
  });
});

describe('drained fuel', () => {
  const drain = (litres: number, over: Partial<Household> = {}) =>
    plan(machine({ fuel: fuel({ choice: 'drain', inTankL: { value: litres, low: litres, high: litres } }) }), {
      household: household(over),
    });

  test('the cans hold what was drained, bowls and line included', () => {
    expect(drain(9.8).plan.drainedL).toBeCloseTo(10, 9);
    expect(drain(9.8).plan.cans).toBe(1);
    expect(drain(9.9).plan.cans).toBe(2);
  });

  test('too few cans are said before the tank is opened', () => {
    const { warnings } = drain(15);
    expect(warnings.some((w) => w.act.includes('2 approved cans'))).toBe(true);
    expect(drain(5).warnings.some((w) => w.act.includes('approved cans'))).toBe(false);
  });

  test('draining is no danger of the plan: its steps carry the cautions', () => {
    expect(drain(5).warnings.map((w) => w.level)).not.toContain('danger');
    const steps = library()
      .filter((procedure) => procedure.id === 'fuel-drain')
      .flatMap((procedure) => procedure.steps)
      .filter((step) => /^(Set out|Drain)/.test(step.title));
    expect(steps.length).toBeGreaterThan(2);
    for (const step of steps) expect(step.cautions).toContain('petrol-vapour');
  });

  test('the limit of the country is held against the litres, and no row means no verdict', () => {
    expect(drain(5, { country: 'GB' }).plan.localLimit.exceeded).toBe(false);
    expect(drain(25, { country: 'DE' }).plan.localLimit.exceeded).toBe(true);
    expect(drain(5, { country: 'NZ' }).plan.localLimit).toMatchObject({ exceeded: null });
    expect(drain(5, { country: undefined }).plan.localLimit.text).toMatch(/check your local code/i);
  });

  test('it is used up within a month, in a machine that is in use then and takes it', () => {
    const winter = machine({ id: 'badger', name: 'Badger', ...rest('2027-03-20', '2027-10-01') });
    const asleep = machine({ id: 'fern', name: 'Old Fern', ...rest('2026-10-01', '2027-05-01') });
    const plainPetrol = machine({
      id: 'saw',
      name: 'Saw',
      ...rest('2027-03-20', '2027-10-01'),
      fuel: fuel({ blend: 'E0' }),
    });
    const { plan: p, warnings } = drain(6, { machines: [winter, asleep, plainPetrol] });
    expect(p.drainedUseBy).toBe('2026-11-25');
    const text = warnings.find((w) => w.text.startsWith('Use the drained fuel'))!.text;
    expect(text).toContain('Badger');
    expect(text).not.toContain('Fern');
    expect(text).not.toContain('Saw');
  });

  test('a machine whose first use is the last day for the drained fuel is in use in time, one a day later is not', () => {
    const from = (firstUse: string) => {
      const other = machine({ id: 'badger', name: 'Badger', ...rest('2026-10-01', firstUse) });
      return drain(6, { machines: [other] }).warnings.some((w) => w.text.includes('Badger'));
    };
    // Drained on 25 October, to be used within a month.
    expect([from('2026-11-24'), from('2026-11-25'), from('2026-11-26')]).toEqual([true, true, false]);
  });

  test('what is drained is the sum of what stands beside it: bowls have their share, an injected engine has none', () => {
    for (const delivery of ['carburettor', 'injection'] as const) {
      const drained = plan(machine({ fuel: fuel({ choice: 'drain', delivery }) })).plan.derivations.find(
        ({ method }) => method === 'fuel.drained',
      )!;
      const [inTank, inBowls] = drained.inputs.map(({ value }) => Number(value));
      expect(drained.result.value, delivery).toBeCloseTo(inTank! + inBowls!, 9);
      expect(inBowls! > 0, delivery).toBe(delivery === 'carburettor');
    }
  });

  test('two-stroke mixture goes only into another machine run on mixture', () => {
    const mixture = machine({ fuel: fuel({ premix: true, tankMaterial: 'plastic', choice: 'drain' }) });
    const winter = machine({ id: 'badger', name: 'Badger', ...rest('2027-03-20', '2027-10-01') });
    const { warnings } = plan(mixture, { household: household({ machines: [winter] }) });
    expect(warnings.some((w) => w.act.includes('two-stroke that runs on mixture'))).toBe(true);
  });

  test('mixture that stays is topped up with mixture', () => {
    const { warnings } = plan(machine({ fuel: fuel({ premix: true }) }));
    expect(warnings.some((w) => w.act.includes('never with plain petrol'))).toBe(true);
  });
});

test('every printed amount of a fuel plan has its derivation, with a source and units', () => {
  for (const choice of ['fill', 'drain'] as const) {
    const { plan: p } = plan(machine({ fuel: fuel({ choice }) }));
    const results = p.derivations.map((d) => d.result.value);
    for (const amount of [p.addL, p.doseML, p.runMinutes, p.drainedL, p.cans, p.waterToleranceML, p.breathingWaterML]) {
      if (amount !== undefined) expect(results).toContain(amount);
    }
    expect(p.derivations.filter((d) => d.equation === '' || d.inputs.length === 0)).toEqual([]);
    expect(p.derivations.filter((d) => d.sources.length === 0)).toEqual([]);
  }
});

test('a summer of the south is planned as any other rest', () => {
  const { plan: p } = plan(machine(rest('2026-05-10', '2026-10-20')), {
    store: storeYear(12, -8),
    lowestStoreC: -2,
    highestStoreC: 25,
    asOf: '2026-05-10',
  });
  expect(p.choice).toBe('fill');
  expect(p.useBy.earliest).toBe('2026-11-10');
});

test('a density of another fuel, or nonsense, is either covered by the table or refused in words', () => {
  expect(
    plan(machine({ fuel: fuel({ blend: 'E85', choice: 'fill', densityKgM3: 781 }) })).plan.fullAtHottestPct,
  ).toBeGreaterThan(90);
  expect(() => volumeCorrection(Number.NaN, 745)).toThrow(/expected/);
  expect(() => volumeCorrection(10, 1000)).toThrow(/653 to 839/);
});
