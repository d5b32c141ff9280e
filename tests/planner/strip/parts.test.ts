import { expect, test } from 'vitest';
import { planStrip } from '../../../src/planner/strip/index.ts';
import { parseQuantity } from '../../../src/planner/units/index.ts';
import { machine } from '../fluids/fixture.ts';
import { assembly, fastener, job } from './workshop.ts';

const banjo = (torqueNm: number) => fastener({ what: 'banjo bolt', head: 'hex 12 mm', torqueNm, banjo: true });
const part = (what: string, over = {}) => ({ what, amount: 1, unit: 'piece', leadDays: 5, inStock: false, ...over });
const strip = (m: Parameters<typeof machine>[0]) => planStrip(machine(m)).strip;

// Check value of the trade (common practice, no source).
test('two banjo bolts at 23 and 20 N·m need four sealing washers', () => {
  const lines = assembly('oil-lines', [], { fasteners: [banjo(23), banjo(20)] });
  const { parts, torques } = strip({ assemblies: [lines], jobs: [job('heads', ['oil-lines'])] });
  expect(parts).toMatchObject([{ what: 'sealing washer', amount: 4, unit: 'piece' }]);
  expect(torques.map((t) => t.torqueNm)).toEqual([23, 20]);
});

test('sealing washers that the content lists already are not counted twice', () => {
  const fasteners = [fastener({ banjo: true, count: 2 })];
  const singleUse = [{ what: 'sealing washer', count: 3, leadDays: 20, inStock: false }];
  const lines = assembly('lines', [], { fasteners, singleUse });
  const jobs = [job('bleed', ['lines'])];
  expect(strip({ assemblies: [lines], jobs }).parts).toMatchObject([
    { what: 'sealing washer', amount: 4, leadDays: 20 },
  ]);
  const full = assembly('lines', [], { fasteners, singleUse: [{ ...singleUse[0]!, count: 4 }] });
  expect(strip({ assemblies: [full], jobs }).parts).toMatchObject([{ what: 'sealing washer', amount: 4 }]);
});

test('the list has parts of jobs, single-use parts, what was to be replaced next time, and notes, of what comes off only', () => {
  const { parts } = strip({
    assemblies: [
      assembly('tank', ['seat'], {
        singleUse: [{ what: 'tap gasket', count: 2, leadDays: 3, inStock: true }],
        replaceNextTime: [part('rubber mount', { amount: 4 })],
      }),
      assembly('seat'),
      assembly('wheel', [], { singleUse: [{ what: 'split pin', count: 1, leadDays: 1, inStock: false }] }),
    ],
    jobs: [job('cables', ['tank'], { parts: [part('throttle cable', { leadDays: 56 })] })],
    notes: [
      { date: '2026-03-01', text: 'front bolts worn', assemblyId: 'tank' },
      { date: '2026-03-01', text: 'rim nicked', assemblyId: 'wheel' },
    ],
  });
  expect(parts.map((p) => [p.what, p.amount, p.leadDays, p.inStock])).toEqual([
    ['throttle cable', 1, 56, false],
    ['tap gasket', 2, 3, true],
    ['rubber mount', 4, 5, false],
    ['front bolts worn', 1, 0, false],
  ]);
});

test('the same part of two jobs is one line, what is in stock another', () => {
  const { parts } = strip({
    jobs: [
      job('a', [], { parts: [part('Gasket'), part('gasket', { inStock: true })] }),
      job('b', [], { parts: [part('gasket ', { leadDays: 30, unit: 'pieces' })] }),
    ],
  });
  expect(parts.map((p) => [p.amount, p.leadDays, p.inStock, p.why])).toEqual([
    [2, 30, false, 'a; b'],
    [1, 5, true, 'a'],
  ]);
});

// Check value of the trade (common practice, no source).
test('19 lbf·ft is 25.8 N·m', () => {
  const cover = assembly('cover', [], {
    fasteners: [fastener({ torqueNm: parseQuantity('19 lbf·ft', 'torque') as number })],
  });
  const [row] = strip({ assemblies: [cover], jobs: [job('a', ['cover'])] }).torques;
  expect(row!.torqueLbfFt).toBeCloseTo(19, 9);
  expect(row!.torqueNm!.toFixed(1)).toBe('25.8');
});

test('a torque that is not published is said to be none', () => {
  const lines = assembly('lines', [], { fasteners: [fastener({ banjo: true }), fastener()] });
  const { torques } = strip({ assemblies: [lines], jobs: [job('a', ['lines'])] });
  expect(torques[0]).toMatchObject({ torqueNm: undefined, torqueLbfFt: undefined });
  expect(torques[0]!.note).toContain('no published figure: snug evenly, check for leaks, recheck');
  expect(torques[1]!.note).toBe('no published figure: snug evenly, check, recheck');
});

test('anti-seize on a dry figure is pointed out, and the figure stays as published', () => {
  const fasteners = [
    fastener({ torqueNm: 20, antiSeize: true }),
    fastener({ torqueNm: 20, antiSeize: true, condition: 'lubricated' }),
    fastener({ torqueNm: 20, condition: 'unstated', threadlock: 'medium' }),
  ];
  const { torques } = strip({ assemblies: [assembly('exhaust', [], { fasteners })], jobs: [job('a', ['exhaust'])] });
  expect(torques.map((t) => t.torqueNm)).toEqual([20, 20, 20]);
  expect(torques[0]!.note).toContain('the figure is as published, not corrected');
  expect(torques[1]!.note).toBe('the figure is for a lubricated thread; anti-seize');
  expect(torques[2]!.note).toBe('whether dry or lubricated is not stated; thread lock, medium strength');
});

test('torque rows follow the order of refitting', () => {
  const one = (id: string, behind: string[]) => assembly(id, behind, { fasteners: [fastener({ what: id })] });
  const { torques } = strip({ assemblies: [one('seat', []), one('tank', ['seat'])], jobs: [job('a', ['tank'])] });
  expect(torques.map((t) => t.what)).toEqual(['tank: tank', 'seat: seat']);
});

test('tools stand by kind and size, each once', () => {
  const heads = ['hex 12 mm', 'T30', 'hex 8 mm', 'Hex 10 mm', 'JIS 2', 'hex 10 mm', 'T8'];
  const fasteners = heads.map((head) => fastener({ head }));
  const jobs = [job('a', ['cover'], { tools: ['feeler gauge', 'T30', 'hex 17 mm'] })];
  expect(strip({ assemblies: [assembly('cover', [], { fasteners })], jobs }).tools).toEqual([
    'hex 8 mm',
    'Hex 10 mm',
    'hex 12 mm',
    'JIS 2',
    'T8',
    'T30',
    'feeler gauge',
    'hex 17 mm',
  ]);
});

test('a torque that is no torque is refused', () => {
  const cover = assembly('cover', [], { fasteners: [fastener({ torqueNm: Number.NaN })] });
  expect(() => strip({ assemblies: [cover], jobs: [job('a', ['cover'])] })).toThrow(/NaN N·m .*expected more than 0/);
});
