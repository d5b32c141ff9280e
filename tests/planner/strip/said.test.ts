/** What is said of taking apart and putting back: each kind of step whole, parts and tools by name, faults of the content. */
import { expect, test } from 'vitest';
import type { Machine } from '../../../src/planner/household.ts';
import type { PlanStep } from '../../../src/planner/season-plan.ts';
import { planStrip, refitSteps, stripProblems, winterSteps } from '../../../src/planner/strip/index.ts';
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
    detail: 'The last of them comes after 1 day. Fork oil, 0.40 US gal (1.5 L) (oil).',
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
