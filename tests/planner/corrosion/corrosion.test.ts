import { describe, expect, test } from 'vitest';
import { desiccantFor } from '../../../src/planner/corrosion/bag-plan.ts';
import { milStd2073BarrierUnits } from '../../../src/planner/corrosion/desiccant.ts';
import { BAGS, firstYearLossUm, planCorrosion, UNWASHED_SALT_FACTOR } from '../../../src/planner/corrosion/index.ts';
import type { Machine, Place } from '../../../src/planner/household.ts';
import { airMonths, machine, place } from '../fluids/fixture.ts';

function plan(
  over: Partial<Machine> = {},
  where: Partial<Place> = {},
  air: { wetHours?: number; annualMeanC?: number; annualMeanRhPct?: number } = {},
  record: { rinseAhead?: boolean; withoutBag?: string } = {},
) {
  return planCorrosion({
    machine: machine(over),
    place: place(where),
    airMonths: airMonths(air.wetHours ?? 100, air.annualMeanRhPct ?? 75),
    restMonths: [10, 11, 12, 1, 2, 3, 4],
    annualMeanC: air.annualMeanC ?? 5,
    annualMeanRhPct: air.annualMeanRhPct ?? 75,
    ...record,
  });
}
const salted = { roadSalt: { exposed: true, washed: false } };
const coast = { chlorideMgM2D: 200, sulphurDioxideMgM2D: 20 };
const ASSUMED = { target: '', value: 'yes', low: 'yes', high: 'no', unit: '', reason: '', settle: '' };
const dry = { ...place().enclosure, maxRhPct: 50 };

describe('the air', () => {
  test('salt that is not washed off multiplies the chloride, and is said', () => {
    const clean = plan().plan;
    const { plan: dirty, warnings } = plan(salted);
    expect(dirty.steelUmPerYear).toBeGreaterThan(clean.steelUmPerYear);
    const chloride = dirty.derivations[0]!.inputs.find((i) => i.name.startsWith('chloride, S'))!.value;
    expect(chloride).toBe(2 * UNWASHED_SALT_FACTOR);
    expect(dirty.protection.measures[0]).toMatch(/wash the salt off/);
    expect(warnings.some((w) => w.act.includes('fresh water'))).toBe(true);
    expect(plan({ roadSalt: { exposed: true, washed: true } }).plan.steelUmPerYear).toBe(clean.steelUmPerYear);
  });

  test('salt that the lay-up will rinse off is a note, and the machine is reckoned as washed', () => {
    const { plan: rinsed, warnings } = plan(salted, {}, {}, { rinseAhead: true });
    const { derivations, ...figures } = plan().plan;
    expect(rinsed).toMatchObject(figures);
    expect(rinsed.derivations).toEqual(derivations);
    const note = { level: 'note', machine: 'juniper', about: 'corrosion' };
    const act = 'Rinse it off at the lay-up, before anything else, and tick the rinse.';
    const text = (assumed: string) =>
      `Road salt is taken to be on the machine until it is rinsed${assumed}. The plan reckons with it rinsed off.`;
    expect(warnings).toEqual([{ ...note, text: text(''), act }]);
    const unsaid = { ...ASSUMED, field: 'roadSalt.exposed' };
    const said = plan({ ...salted, assumptions: [unsaid] }, {}, {}, { rinseAhead: true }).warnings;
    expect(said).toEqual([
      { ...note, text: text(' (assumed: nobody has said that it is kept off salted roads)'), act },
    ]);
    expect(plan({ ...salted, assumptions: [unsaid] }).warnings).toEqual([
      expect.objectContaining({
        level: 'warning',
        text: expect.stringMatching(/over the rest \(assumed: .*\), for no rinse is ticked: C\d air for its steel\.$/),
      }),
    ]);
    expect(plan({}, {}, {}, { rinseAhead: true }).warnings).toEqual([]);
  });

  test('a clean cold inland store carries the threefold under-estimate of the standard', () => {
    const { plan: cold } = plan({}, {}, { annualMeanC: -4 });
    expect(cold.uncertainty.high).toBe(3);
    expect(cold.caveats.some((c) => c.includes('three times too low'))).toBe(true);
    const { plan: mild } = plan({}, {}, { annualMeanC: 9 });
    expect(mild.uncertainty).toEqual({ low: 0.67, high: 1.5 });
    expect(mild.caveats.some((c) => c.includes('three times too low'))).toBe(false);
  });

  test('inputs outside the intervals of the standard are named', () => {
    const { plan: p } = plan({}, { sulphurDioxideMgM2D: 0.2 }, { annualMeanC: -20 });
    expect(p.caveats.filter((c) => c.includes('extrapolation'))).toHaveLength(2);
    expect(plan().plan.caveats.filter((c) => c.includes('extrapolation'))).toEqual([]);
  });

  // ISO 9223:2012, table 2 for steel [µm in the first year], and its −33 % to +50 %; on clean, cold inland sites three times as much.
  test('the categories between which the estimate may lie are those of the standard’s own error', () => {
    const CATEGORIES = [
      ['C1', 1.3],
      ['C2', 25],
      ['C3', 50],
      ['C4', 80],
      ['C5', 200],
      ['CX', 700],
    ] as const;
    const categoryAt = (um: number) => CATEGORIES.find(([, upTo]) => um <= upTo)![0];
    const told = new Set<string>();
    for (const annualMeanC of [-4, 9])
      for (const chlorideMgM2D of [0.5, 3, 10, 30, 60, 120, 200, 300]) {
        const { steelUmPerYear, category, uncertainty, caveats } = plan({}, { chlorideMgM2D }, { annualMeanC }).plan;
        expect(uncertainty.low).toBe(0.67);
        const [low, high] = [categoryAt(steelUmPerYear * 0.67), categoryAt(steelUmPerYear * uncertainty.high)];
        expect(category).toBe(categoryAt(steelUmPerYear));
        const range =
          low === high ? '' : `; within the range here it could be ${low === category ? '' : `${low} to `}${high}`;
        expect(caveats[0]).toBe(`ISO 9223 states −33 % to +50 % for an estimate from air data${range}.`);
        told.add(low === high ? 'none' : low === category ? 'more' : 'less and more');
      }
    expect(told).toEqual(new Set(['none', 'more', 'less and more']));
  });

  test('damper, saltier and dirtier air never comes out milder', () => {
    const base = { temperatureC: 8, rhPct: 70, sulphurDioxideMgM2D: 2, chlorideMgM2D: 5 };
    for (const metal of ['steel', 'zinc'] as const) {
      const loss = firstYearLossUm(metal, base);
      expect(firstYearLossUm(metal, { ...base, rhPct: 80 })).toBeGreaterThan(loss);
      expect(firstYearLossUm(metal, { ...base, chlorideMgM2D: 50 })).toBeGreaterThan(loss);
      expect(firstYearLossUm(metal, { ...base, sulphurDioxideMgM2D: 20 })).toBeGreaterThan(loss);
    }
  });

  test('nonsense is refused in words', () => {
    const base = { temperatureC: 8, rhPct: 70, sulphurDioxideMgM2D: 2, chlorideMgM2D: 5 };
    expect(() => firstYearLossUm('steel', { ...base, rhPct: Number.NaN })).toThrow(/relative humidity/);
    expect(() => firstYearLossUm('steel', { ...base, chlorideMgM2D: -1 })).toThrow(/deposition/);
    expect(() => firstYearLossUm('steel', { ...base, sulphurDioxideMgM2D: Number.NaN })).toThrow(/deposition/);
    for (const rhPct of [0, 100]) expect(firstYearLossUm('steel', { ...base, rhPct })).toBeGreaterThan(0);
    for (const rhPct of [-0.1, 100.1]) expect(() => firstYearLossUm('steel', { ...base, rhPct })).toThrow(/0 to 100/);
    for (const temperatureC of [-90, 90])
      expect(() => firstYearLossUm('zinc', { ...base, temperatureC })).toThrow(/−90 to 90/);
    for (const kg of [-0.1, Number.NaN]) expect(() => milStd2073BarrierUnits(1, { wood: kg })).toThrow(/dunnage/);
    expect(() => milStd2073BarrierUnits(1, { straw: 1 } as never)).toThrow(/of "straw", expected 0 or more of/);
    expect(() => milStd2073BarrierUnits(-1)).toThrow(/bag/);
    expect(milStd2073BarrierUnits(0, { wood: 0 })).toBe(0);
    const air = { temperatureC: 5, rhPct: 75, vapourPa: 650 };
    expect(() => desiccantFor('boat' as never, 100, air)).toThrow(/found "boat", expected one of motorcycle/);
  });
});

describe('protection', () => {
  test('three weeks ask for no more than washing and a film, in whatever air', () => {
    const short = { season: { lastUse: '2026-10-25', firstUse: '2026-11-15', proposed: false, reasons: [] } };
    expect(plan({ ...short, ...salted }, coast).plan.protection.level).toBeLessThanOrEqual(2);
  });

  test('three years ask for a closed bag, or for dry air where there is power', () => {
    const long = { season: { lastUse: '2026-10-25', firstUse: '2029-10-20', proposed: false, reasons: [] } };
    const shed = plan(long).plan;
    expect(shed.protection.level).toBe(4);
    expect(shed.desiccant!.din55474Units).toBeGreaterThan(0);
    const powered = plan(long, { power: true }).plan;
    expect(powered.protection.level).toBe(5);
    expect(powered.desiccant).toBeUndefined();
    expect(powered.dehumidifierRhPct).toEqual({ low: 40, high: 50 });
  });

  test('a carport cannot be dried, power or not', () => {
    const open = { ...place().enclosure, airChangesPerH: 20 };
    const { plan: p } = plan({}, { ...coast, power: true, enclosure: open });
    expect(p.protection.level).toBe(4);
    expect(p.dehumidifierRhPct).toBeUndefined();
  });

  test('a store that is held dry needs no bag', () => {
    const { plan: p } = plan({}, { ...coast, enclosure: dry });
    expect(p.protection.level).toBeLessThanOrEqual(3);
    expect(p.desiccant).toBeUndefined();
    expect(p.dehumidifierRhPct).toBeDefined();
  });

  test('a bag that is left out on purpose leaves film and cover', () => {
    const { plan: p } = plan({}, coast, {}, { withoutBag: 'the closed bag is left out on purpose' });
    expect(p.protection).toMatchObject({ level: 3, name: 'fogged cylinders' });
    expect(p.protection.reason).toMatch(/; the closed bag is left out on purpose\.$/);
    expect(p.desiccant).toBeUndefined();
    // Where no bag is asked for there is none to leave out.
    expect(plan({}, {}, {}, { withoutBag: 'the closed bag is left out on purpose' }).plan).toEqual(plan().plan);
  });

  test('more wet hours ask for more', () => {
    expect(plan({}, {}, { wetHours: 600 }).plan.protection.level).toBeGreaterThan(
      plan({}, {}, { wetHours: 5 }).plan.protection.level,
    );
  });

  test('a machine without cylinders is not fogged', () => {
    const electric = { engine: { ...machine().engine, cycle: 'electric' as const } };
    const fogged = (m: Partial<Machine>) =>
      plan(m, {}, { wetHours: 400 }).plan.protection.measures.some((x) => /Fog/.test(x));
    expect(fogged({})).toBe(true);
    expect(fogged(electric)).toBe(false);
  });
});

describe('desiccant', () => {
  test('both standards stand side by side, and the note says why they differ', () => {
    const { plan: p } = plan({}, coast);
    expect(p.desiccant).toMatchObject({ areaM2: 14, volumeM3: 3 });
    expect(p.desiccant!.milStd2073Units).not.toBe(p.desiccant!.din55474Units);
    expect(p.desiccant!.note).toContain('disagree');
    const methods = p.derivations.map((d) => d.method);
    expect(methods.filter((m) => m.startsWith('corrosion.desiccant'))).toEqual([
      'corrosion.desiccant-din',
      'corrosion.desiccant-mil',
    ]);
  });

  test('every kind of machine has a bag whose surface could hold its room', () => {
    for (const { areaM2, volumeM3 } of BAGS) expect(areaM2 ** 3).toBeGreaterThan(36 * Math.PI * volumeM3 ** 2);
    expect(new Set(BAGS.map((b) => b.kind)).size).toBe(8);
  });
});

test('category, steel and zinc have their derivations with sources', () => {
  const { plan: p } = plan(salted, coast);
  const results = p.derivations.map((d) => d.result.value);
  expect(results).toContain(p.steelUmPerYear);
  expect(results).toContain(p.zincUmPerYear);
  expect(p.derivations.filter((d) => d.sources.length === 0 || d.inputs.length === 0)).toEqual([]);
  // By the symbols of the standard's equations; the factor and what it was taken of stand there where it was.
  const symbols = (of: typeof p) => of.derivations[0]!.inputs.map(({ name }) => /, (\w+)$/.exec(name)?.[1] ?? name);
  expect(symbols(plan().plan)).toEqual(['T', 'RH', 'P', 'S']);
  expect(symbols(p)).toEqual(['T', 'RH', 'P', 'S', 'chloride of the place', 'factor for salt not washed off']);
});

test('the units of desiccant follow from the figures beside them, by the equations of both standards', () => {
  const long = { season: { lastUse: '2026-10-25', firstUse: '2029-10-20', proposed: false, reasons: [] } };
  const { desiccant, derivations } = plan(long).plan;
  const [din, mil] = ['din', 'mil'].map(
    (name) => derivations.find(({ method }) => method === `corrosion.desiccant-${name}`)!,
  );
  const of = ({ inputs }: typeof din & object, symbol: string) =>
    Number(inputs.find(({ name, unit }) => name.endsWith(`, ${symbol}`) || unit === symbol)!.value);
  const [V, b, A, c, e, W, t, a, m] = ['V', 'b', 'A', 'c', 'e', 'W', 't', 'a', 'kg'].map((symbol) =>
    of(din!, symbol),
  ) as number[];
  expect(din!.equation).toBe('n = (V·b + m·c + A·e·W·t)/a');
  expect(din!.result).toEqual({ value: Math.ceil((V! * b! + m! * c! + A! * e! * W! * t!) / a!), unit: 'units' });
  expect(desiccant!.din55474Units).toBe(din!.result.value);
  // MIL-STD-2073, method 50: 1.6 units a square foot of 0.3048 m, 8 a pound of 0.45359237 kg of wood.
  const units = (1.6 * of(mil!, 'A')) / 0.3048 ** 2 + (8 * of(mil!, 'kg')) / 0.45359237;
  expect(mil!.result).toEqual({ value: Math.ceil(units), unit: 'units' });
  expect(desiccant!.milStd2073Units).toBe(mil!.result.value);
});

// Saturated air has 9.4 g/m³ of vapour at 10 °C, 6.8 at 5 °C, 4.85 at 0 °C: handbook tables, from memory.
test('a bag closes in the air of the month in which it is closed, not that of the year', () => {
  const closed = (lastUse: string, annualMeanRhPct: number) => {
    const season = { lastUse, firstUse: '2029-10-20', proposed: false, reasons: [] };
    const { derivations } = planCorrosion({
      machine: machine({ season }),
      place: place(),
      airMonths: airMonths(100, 80).map((month) => ({ ...month, meanC: month.month === 10 ? 5 : 10 })),
      restMonths: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
      annualMeanC: 0,
      annualMeanRhPct,
    }).plan;
    return Number(derivations.flatMap(({ inputs }) => inputs).find(({ name }) => name.endsWith(', b'))!.value);
  };
  expect(closed('2026-10-25', 30)).toBeCloseTo(0.8 * 6.8, 1);
  expect(closed('2026-09-25', 30)).toBeCloseTo(0.8 * 9.4, 1);
  expect(closed('2026-10-25', 60)).toBe(closed('2026-10-25', 30));
});
