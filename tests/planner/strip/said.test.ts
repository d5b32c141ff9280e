/** What is said of taking apart and putting back: each kind of step whole, parts and tools by name, faults of the content. */
import { expect, test } from 'vitest';
import type { Machine } from '../../../src/planner/household.ts';
import type { PlanStep } from '../../../src/planner/season-plan.ts';
import {
  orderedParts,
  partRows,
  planStrip,
  refitSteps,
  stripProblems,
  winterSteps,
} from '../../../src/planner/strip/index.ts';
import { mustComeOff, removalOrder } from '../../../src/planner/strip/order.ts';
import { torqueRows } from '../../../src/planner/strip/torque.ts';
import { machine } from '../fluids/fixture.ts';
import { assembly, fastener, job } from './workshop.ts';

function all(over: Partial<Machine>, units: 'metric' | 'us' = 'metric') {
  const m = machine(over);
  const { strip, problems } = planStrip(m);
  return { strip, problems, winter: winterSteps(m, strip, units), startUp: refitSteps(m, strip) };
}
const by = (steps: readonly PlanStep[], id: string) => steps.find((step) => step.id === id);

const TANK = assembly('tank', ['seat'], {
  name: 'Fuel tank',
  opensFluid: 'fuel',
  cautions: ['Two people.'],
  refitNotes: ['New clip.', 'Look for leaks.'],
  fasteners: [fastener({ what: 'Tank bolt', head: 'hex 12 mm', torqueNm: 22 }), fastener({ head: 'hex 12 mm' })],
  safetyCritical: true,
});
const SEAT = assembly('seat', [], { name: 'Seat' });
const VALVES = job('valves', ['tank'], {
  name: 'Valve clearances',
  minutes: 95,
  tools: ['feeler gauge'],
  notes: ['Cold engine.', 'Write them down.'],
  cautions: ['Ignition off.'],
  parts: [{ what: 'Cover gasket.', amount: 2, unit: 'pieces', leadDays: 21, inStock: false }],
});

test('a removal, a job, a refit and its check say what is done, with what, why, and what can hurt', () => {
  const { winter, startUp } = all({ assemblies: [TANK, SEAT], jobs: [VALVES] });
  const fuel = 'Fuel is opened: no flame, no pilot light, no charging nearby; drain into a labelled, approved can.';
  expect(by(winter, 'strip.off.tank')).toMatchObject({
    phase: 'winter',
    part: 'Taking apart',
    title: 'Take off: Fuel tank',
    minutes: 10,
    detail: 'Mark and bag what comes off, thread bolts back into their own holes, plug open ports.',
    tools: ['hex 12 mm'],
    cautions: ['Two people.', fuel],
    why: 'For: Valve clearances.',
    opens: ['assembly:tank'],
    closes: [],
    after: ['strip.order.valves', 'strip.off.seat'],
    safetyCritical: true,
    waitH: 0,
    sources: ['common practice'],
    done: false,
  });
  expect(by(winter, 'job.valves')).toMatchObject({
    part: 'Valve clearances',
    title: 'Valve clearances',
    minutes: 95,
    detail: 'Cold engine. Write them down.',
    tools: ['feeler gauge'],
    supplies: [{ what: 'Cover gasket.', amount: 2, unit: 'pieces' }],
    cautions: ['Ignition off.'],
    why: 'A job for the idle months.',
    opens: [],
    closes: [],
    safetyCritical: false,
  });
  expect(by(winter, 'strip.on.tank')).toMatchObject({
    phase: 'winter',
    part: 'Putting back together',
    title: 'Refit: Fuel tank',
    minutes: 15,
    detail: 'New clip. Look for leaks.',
    cautions: ['Two people.', fuel],
    why: 'It was taken off.',
    opens: [],
    closes: ['assembly:tank'],
    doNotRide: 'Fuel tank: not refitted, or not at its torque.',
    stage: undefined,
  });
  expect(by(winter, 'strip.on.seat')).toMatchObject({
    detail: undefined,
    doNotRide: undefined,
    safetyCritical: false,
    cautions: [],
  });
  expect(startUp).toMatchObject([
    {
      id: 'strip.check.tank',
      phase: 'start-up',
      stage: 'refit',
      part: 'Putting back together',
      title: 'Check the refit: Fuel tank',
      minutes: 5,
      detail: 'Taken off and refitted over the rest. Go round every fastener once more.',
      why: 'It was off, and a mistake here is dangerous.',
      doNotRide: 'Fuel tank: a fastener is loose, missing or not at its torque.',
      opens: [],
      closes: [],
      done: false,
    },
  ]);
});

test.each([
  ['oil', /^Oil is opened: catch it/],
  ['coolant', /^Coolant is opened: only when cold; it is poisonous/],
  ['brake-fluid', /^Brake fluid is opened: it strips paint; .*bleed before any ride\.$/],
] as const)('what opens %s says so', (opensFluid, caution) => {
  const { winter } = all({ assemblies: [assembly('a', [], { opensFluid })], jobs: [job('j', ['a'])] });
  expect(by(winter, 'strip.off.a')).toMatchObject({ cautions: [expect.stringMatching(caution)] });
});

test('an order says what, how much, for what, and how long it takes', () => {
  const noted = { date: '2026-09-01', text: 'Clip cracked', assemblyId: 'tank' };
  const { winter } = all({ assemblies: [TANK, SEAT], jobs: [VALVES], notes: [noted] }, 'us');
  expect(by(winter, 'strip.order.valves')).toMatchObject({
    part: 'Orders',
    title: 'Order parts for: Valve clearances',
    minutes: 15,
    detail: 'The last of them comes after 21 days. Cover gasket, 2 pieces (Valve clearances).',
    why: 'Parts are here before the machine is opened.',
    waitH: 504,
  });
  const oil = job('oil', [], { parts: [{ what: 'Fork oil', amount: 1.5, unit: 'L', leadDays: 1, inStock: false }] });
  expect(by(all({ jobs: [oil] }, 'us').winter, 'strip.order.oil')).toMatchObject({
    detail: 'The last of them comes after 1 day. Fork oil, 1.6 US qt (oil).',
  });
});

test('what is only refitted at start-up has its parts ordered under a name of its own', () => {
  const own = assembly('pipe', [], { singleUse: [{ what: 'Gasket', count: 1, leadDays: 9, inStock: false }] });
  const { winter, startUp } = all({ assemblies: [own], asLeft: [{ item: 'pipe' }] });
  const order = winter.find((step) => step.id.startsWith('strip.order.'))!;
  expect(order).toMatchObject({
    title: 'Order parts for: what is refitted',
    detail: 'The last of them comes after 9 days. Gasket, 1 piece (used once: pipe).',
  });
  expect(by(startUp, 'strip.on.pipe')).toMatchObject({
    after: [order.id],
    supplies: [{ what: 'Gasket', amount: 1, unit: 'piece' }],
  });
  const inStock = assembly('pipe', [], { singleUse: [{ what: 'Gasket', count: 1, leadDays: 9, inStock: true }] });
  expect(by(all({ assemblies: [inStock], asLeft: [{ item: 'pipe' }] }).startUp, 'strip.on.pipe')).toMatchObject({
    after: [],
  });
});

test('parts ordered late hold their job and what comes off for it, from the day they come', () => {
  const ordered = { stepId: 'strip.order.valves', date: '2026-11-10' };
  const { winter } = all({ assemblies: [TANK, SEAT], jobs: [VALVES], doneSteps: [ordered] } as Partial<Machine>);
  // 10 November and 21 days.
  expect(by(winter, 'job.valves')).toMatchObject({ earliest: '2026-12-01' });
  expect(by(winter, 'strip.off.seat')).toMatchObject({ earliest: '2026-12-01' });
  expect(by(all({ assemblies: [TANK, SEAT], jobs: [VALVES] }).winter, 'job.valves')).not.toHaveProperty('earliest');
});

test('jobs stand after those that they wait for, and otherwise as they are written', () => {
  const ids = (jobs: ReturnType<typeof job>[]) =>
    all({ jobs }).winter.flatMap(({ id }) => (id.startsWith('job.') ? [id.slice(4)] : []));
  expect(ids([job('c', [], { after: ['b'] }), job('a'), job('b')])).toEqual(['a', 'b', 'c']);
  expect(ids([job('c'), job('a'), job('b')])).toEqual(['c', 'a', 'b']);
});

test('a job that is not needing the stand leaves it to others', () => {
  const stand = { needs: { stand: true, bench: false } };
  const { winter } = all({
    assemblies: [SEAT, assembly('wheel')],
    jobs: [job('a', ['seat']), job('b', ['wheel'], stand)],
  });
  const needs = (id: string) => by(winter, id)!.needs.stand;
  expect(['strip.off.seat', 'job.a', 'strip.on.seat'].map(needs)).toEqual([false, false, false]);
  expect(['strip.off.wheel', 'job.b', 'strip.on.wheel'].map(needs)).toEqual([true, true, true]);
});

test('washers of banjo bolts are two to a bolt, less those that are listed, and say how they were counted', () => {
  const line = (listed: number, count: number) =>
    all({
      assemblies: [
        assembly('line', [], {
          fasteners: [fastener({ banjo: true, count })],
          singleUse: listed > 0 ? [{ what: 'Sealing washer', count: listed, leadDays: 12, inStock: false }] : [],
        }),
      ],
      jobs: [job('j', ['line'])],
    }).strip.parts.filter(({ why }) => /banjo/.test(why));
  expect(line(0, 1)).toMatchObject([
    { what: 'sealing washer', amount: 2, leadDays: 7, why: 'line: 1 banjo bolt, a washer on each side' },
  ]);
  expect(line(1, 2)).toMatchObject([
    { amount: 4, leadDays: 12, why: 'used once: line; line: 2 banjo bolts, a washer on each side; 1 listed already' },
  ]);
  expect(line(4, 2)).toEqual([]);
});

test('what was to be replaced at this removal and what was noted earlier are on the list of parts', () => {
  const seat = assembly('seat', [], {
    replaceNextTime: [{ what: 'Foam', amount: 0.5, unit: 'm²', leadDays: 3, inStock: false }],
    singleUse: [{ what: 'Clip', count: 4, leadDays: 2, inStock: true }],
  });
  const notes = [{ date: '2026-09-01', text: 'Cover torn', assemblyId: 'seat' }];
  expect(all({ assemblies: [seat], jobs: [job('j', ['seat'])], notes }).strip.parts).toEqual([
    { what: 'Clip', amount: 4, unit: 'piece', leadDays: 2, inStock: true, why: 'used once: seat' },
    { what: 'Foam', amount: 0.5, unit: 'm²', leadDays: 3, inStock: false, why: 'replace at this removal: seat' },
    { what: 'Cover torn', amount: 1, unit: 'as noted', leadDays: 0, inStock: false, why: 'noted earlier: seat' },
  ]);
  expect(all({ assemblies: [seat], notes }).strip.parts).toEqual([]);
});

test('the torque wrench covers the least and the largest figure, and what goes on threads is a tool too', () => {
  const tools = (...fasteners: ReturnType<typeof fastener>[]) =>
    all({ assemblies: [assembly('a', [], { fasteners })], jobs: [job('j', ['a'])] }).strip.tools;
  // 1 lbf·ft = 1.3558 N·m: 8.9 N·m is 6.6 lbf·ft, 35.2 N·m is 26.0; outwards in N·m 8 and 36, which is 6 and 27 lbf·ft.
  expect(tools(fastener({ torqueNm: 8.9 }), fastener({ torqueNm: 35.2 }))).toEqual([
    'hex 10 mm',
    'torque wrench that covers 8–36 N·m (6–27 lbf·ft)',
  ]);
  expect(tools(fastener({ torqueNm: 20 }))).toContain('torque wrench that covers 20 N·m (15 lbf·ft)');
  expect(tools(fastener())).toEqual(['hex 10 mm']);
  expect(
    tools(
      fastener({ threadlock: 'medium' }),
      fastener({ threadlock: 'high' }),
      fastener({ threadlock: 'medium' }),
      fastener({ antiSeize: true }),
    ),
  ).toEqual(['hex 10 mm', 'thread lock, high strength', 'thread lock, medium strength', 'anti-seize']);
});

test('faults of assemblies and jobs are told with their place, what was found and what is expected', () => {
  const problems = (over: Partial<Machine>) =>
    stripProblems(machine(over)).map(({ path, message }) => `${path}: ${message}`);
  expect(
    problems({ assemblies: [SEAT, assembly('tank', ['saet'])], jobs: [job('j', ['tnak'], { after: ['k'] })] }),
  ).toEqual([
    'assemblies.1.behind.0: found the assembly "saet", expected one of seat, tank',
    'jobs.0.assemblies.0: found the assembly "tnak", expected one of seat, tank',
    'jobs.0.after.0: found the job "k", expected one of j',
  ]);
  expect(problems({ jobs: [job('j', ['seat'])] })).toEqual([
    'jobs.0.assemblies.0: found the assembly "seat", expected no assembly, since this machine has none',
  ]);
  const note = { date: '2026-09-01', text: 'Torn', assemblyId: 'seta' };
  expect(problems({ assemblies: [SEAT], notes: [note] })).toEqual([
    'notes.0.assemblyId: found the assembly "seta", expected one of seat',
  ]);
  expect(problems({ notes: [note] })).toEqual([
    'notes.0.assemblyId: found the assembly "seta", expected no assembly, since this machine has none',
  ]);
  expect(problems({ notes: [{ date: '2026-09-01', text: 'Torn' }] })).toEqual([]);
  expect(problems({ assemblies: [SEAT, SEAT], jobs: [job('j'), job('j')] })).toEqual([
    'assemblies.1.id: found a second assembly "seat", expected each name once',
    'jobs.1.id: found a second job "j", expected each name once',
  ]);
  expect(problems({ assemblies: [assembly('a', ['b']), assembly('b', ['a'])] })).toEqual([
    'assemblies.0.behind: found assemblies that lie behind one another: a -> b -> a, expected an order in which they come off',
  ]);
  expect(problems({ jobs: [job('x'), job('j', [], { after: ['k'] }), job('k', [], { after: ['j'] })] })).toEqual([
    'jobs.1.after: found jobs that wait for one another: j -> k -> j, expected an order in which they are done',
  ]);
});

test('a cycle is named without the way that leads into it', () => {
  const nodes = [
    { id: 'a', behind: ['b'] },
    { id: 'b', behind: ['c'] },
    { id: 'c', behind: ['b'] },
    { id: 'd', behind: [] },
  ];
  expect(removalOrder(nodes, new Set(['a', 'b', 'c', 'd']))).toEqual({ off: [], cycles: [['b', 'c', 'b']] });
  const two = machine({ assemblies: [assembly('a', ['b']), assembly('b', ['c']), assembly('c', ['b'])] });
  expect(stripProblems(two).map((p) => p.path)).toEqual(['assemblies.1.behind']);
});

test('what lies outside the chosen is out of the way, and what is to come first does where nothing is in front', () => {
  const nodes = [
    { id: 'seat', behind: [] },
    { id: 'tank', behind: ['seat'] },
    { id: 'lamp', behind: [] },
  ];
  expect(removalOrder(nodes, new Set(['tank', 'lamp'])).off).toEqual(['tank', 'lamp']);
  expect(removalOrder(nodes, new Set(['seat', 'tank', 'lamp']), new Set(['lamp', 'tank'])).off).toEqual([
    'lamp',
    'seat',
    'tank',
  ]);
  expect(mustComeOff(nodes, ['tank', 'unknown'])).toEqual(new Set(['tank', 'seat']));
});

test('a note on what is none names all that there is', () => {
  const notes = [{ date: '2026-09-01', text: 'Torn', assemblyId: 'seta' }];
  expect(stripProblems(machine({ assemblies: [SEAT, TANK], notes }))[0]!.message).toBe(
    'found the assembly "seta", expected one of seat, tank',
  );
});

test('what was taken off for a job that is gone says so, and is put back at start-up', () => {
  const doneSteps = [{ stepId: 'strip.off.seat', date: '2026-11-08' }];
  const { winter, startUp } = all({ assemblies: [SEAT], doneSteps });
  expect(winter).toMatchObject([
    { id: 'strip.off.seat', done: true, why: 'It was taken off, and no open job needs it off any more.' },
  ]);
  expect(startUp.map((step) => step.id)).toEqual(['strip.on.seat']);
});

test('what is dangerous is checked at start-up also when its job is written down as finished', () => {
  const record = ['strip.off.tank', 'job.valves', 'strip.on.tank'].map((stepId) => ({ stepId, date: '2026-11-08' }));
  const { strip, startUp } = all({ assemblies: [TANK], jobs: [{ ...VALVES, done: true }], doneSteps: record });
  expect(strip.on).toEqual([]);
  expect(startUp).toMatchObject([{ id: 'strip.check.tank', after: [], done: false }]);
  expect(all({ assemblies: [{ ...TANK, safetyCritical: false }], doneSteps: record }).startUp).toEqual([]);
  const ticked = [...record, { stepId: 'strip.check.tank', date: '2027-04-03' }];
  expect(all({ assemblies: [TANK], doneSteps: ticked }).startUp).toMatchObject([{ done: true }]);
});

test('a job waits for what comes off for it and for no other removal', () => {
  const { winter } = all({
    assemblies: [SEAT, assembly('wheel')],
    jobs: [
      job('lamp', ['seat']),
      job('bearing', ['wheel'], { after: ['lamp', 'finished'] }),
      job('finished', [], { done: true }),
    ],
  });
  expect(by(winter, 'job.lamp')!.after).toEqual(['strip.off.seat']);
  expect(by(winter, 'job.bearing')!.after).toEqual(['strip.off.wheel', 'job.lamp']);
  expect(by(winter, 'strip.on.wheel')!.after).toEqual(['strip.off.wheel', 'job.bearing']);
});

test('a step needs nothing of the bench, the weather or the power but what its job asks for', () => {
  const none = { dryDay: false, warmEngine: false, stand: false, charger: false, bench: false, power: false };
  const { winter } = all({
    assemblies: [SEAT],
    jobs: [job('lamp', ['seat'], { needs: { stand: false, bench: true } })],
  });
  expect(winter.map((step) => step.needs)).toEqual([none, { ...none, bench: true }, none]);
  for (const step of winter) expect(step).toMatchObject({ amounts: [], waitH: 0 });
});

/** Rows of parts that are not to be bought any more, by name. */
function got(doneSteps: string[], over: Partial<Machine> = {}) {
  const seat = assembly('seat', [], { singleUse: [{ what: 'Clip', count: 4, leadDays: 2, inStock: false }] });
  const m = machine({
    assemblies: [seat, assembly('wheel')],
    jobs: [
      job('lamp', ['seat'], { parts: [{ what: 'Bulb', amount: 1, unit: 'piece', leadDays: 5, inStock: false }] }),
      job('bearing', ['wheel'], { parts: [{ what: 'Seal', amount: 2, unit: 'pieces', leadDays: 9, inStock: false }] }),
    ],
    doneSteps: doneSteps.map((stepId) => ({ stepId, date: '2026-11-08' })),
    ...over,
  });
  const { strip } = planStrip(m);
  const rows = partRows(
    m,
    strip.off.map((s) => s.assembly),
    m.jobs,
  );
  return [...orderedParts(m, strip, rows)].map((row) => row.what).sort();
}

test('what was ordered for a group of jobs, or is used, is not bought again', () => {
  expect(got([])).toEqual([]);
  expect(got(['strip.order.lamp'])).toEqual(['Bulb', 'Clip']);
  expect(got(['strip.order.bearing'])).toEqual(['Seal']);
  expect(got(['job.bearing'])).toEqual(['Seal']);
  expect(got(['strip.off.seat', 'strip.on.seat'])).toEqual(['Clip']);
  // Off again, by the record of this season: its clips are needed anew.
  const again = [
    { stepId: 'strip.on.seat', date: '2026-11-01' },
    { stepId: 'strip.off.seat', date: '2026-11-08' },
  ];
  expect(got([], { doneSteps: again })).toEqual([]);
});

const washers = (over: Parameters<typeof assembly>[2], parts: { what: string; amount: number }[] = []) => {
  const line = assembly('line', [], { fasteners: [fastener({ banjo: true, count: 3 })], ...over });
  const jobs = [
    job('bleed', ['line'], { parts: parts.map((p) => ({ ...p, unit: 'pieces', leadDays: 1, inStock: false })) }),
    job('other', [], { parts: [{ what: 'sealing washer', amount: 9, unit: 'pieces', leadDays: 1, inStock: false }] }),
  ];
  const rows = partRows(machine({ assemblies: [line] }), ['line'], jobs);
  return rows.filter((row) => /banjo bolt/.test(row.why)).map(({ amount, leadDays, why }) => [amount, leadDays, why]);
};

// Three banjo bolts take six washers, one on each side of each fitting.
test('washers count as listed by job, as used once and as to be replaced, under any of their names; others do not', () => {
  const said = 'line: 3 banjo bolts, a washer on each side';
  expect(washers({})).toEqual([[6, 7, said]]);
  expect(washers({}, [{ what: 'Sealing washer', amount: 1 }])).toEqual([[5, 7, `${said}; 1 listed already`]]);
  expect(washers({}, [{ what: 'Bleed nipple', amount: 1 }])).toEqual([[6, 7, said]]);
  const replace = (what: string) => ({
    replaceNextTime: [{ what, amount: 2, unit: 'pieces', leadDays: 3, inStock: false }],
  });
  expect(washers(replace('Washer for the banjo'))).toEqual([[4, 7, `${said}; 2 listed already`]]);
  expect(washers(replace('Banjo washer'))).toEqual([[4, 7, `${said}; 2 listed already`]]);
  expect(washers(replace('Hose'))).toEqual([[6, 7, said]]);
  const once = (what: string, count: number, leadDays: number) => ({
    singleUse: [{ what, count, leadDays, inStock: false }],
  });
  expect(washers(once('Sealing washer', 5, 3))).toEqual([[1, 7, `${said}; 5 listed already`]]);
  expect(washers(once('Split pin', 5, 12))).toEqual([[6, 12, said]]);
  expect(washers(once('Sealing washer', 7, 3))).toEqual([]);
});

test('a torque row says its thread, its head with its size, and refuses what is no torque', () => {
  const rows = (over: Parameters<typeof fastener>[0]) =>
    torqueRows(assembly('cover', [], { name: 'Cover', fasteners: [fastener(over)] }))[0]!;
  expect(rows({ torqueNm: 20, size: 'M8' })).toMatchObject({
    what: 'Cover: bolt',
    count: 1,
    head: 'hex 10 mm (M8)',
    note: 'the figure is for a dry thread',
  });
  expect(rows({ torqueNm: 20 }).head).toBe('hex 10 mm');
  for (const wrong of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => rows({ torqueNm: wrong })).toThrow(`found a torque of ${wrong} N·m for "bolt", expected more than 0`);
  const fuel = torqueRows(assembly('tap', [], { opensFluid: 'fuel', fasteners: [fastener()] }))[0]!;
  expect(fuel.note).toBe('no published figure: snug evenly, check for leaks, recheck');
  expect(rows({ banjo: true, torqueNm: 20 }).note).toBe(
    'the figure is for a dry thread; a new sealing washer on each side of the fitting',
  );
  expect(rows({ antiSeize: true }).note).toBe('no published figure: snug evenly, check, recheck; anti-seize');
});
