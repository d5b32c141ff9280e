/** The promise of the project, held over thousands of generated machines: all that is opened is closed, in safe order. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { CloseStage, Procedure } from '../../../src/planner/household.ts';
import { buildLedger, STAGES, settleSteps } from '../../../src/planner/ledger/index.ts';
import { BEFORE_FIRST_START } from '../../../src/planner/ledger/start-up.ts';
import type { PlanStep } from '../../../src/planner/season-plan.ts';
import { CAUTION_IDS, concreteSteps, machineFacts } from '../../../src/planner/tasks/index.ts';
import { type Case, caseArb, caseOf, procedureOf, stepOf } from '../tasks/generate.ts';
import { library } from '../tasks/library.ts';

const LIBRARY = library();
const RUNS = { numRuns: 3000, seed: 20261025 };

function seasonOf({ machine, place, household, parts }: Case, procedures: readonly Procedure[] = LIBRARY) {
  const steps = settleSteps(machine, concreteSteps({ machine, place, household, parts, procedures }));
  return { steps, ledger: buildLedger(machine, steps, procedures) };
}

function holds(name: string, check: (drawn: Case) => void): void {
  test(name, () => fc.assert(fc.property(caseArb, check), RUNS));
}

holds('every item opened is closed exactly once, by a later step', (drawn) => {
  const { steps, ledger } = seasonOf(drawn);
  expect(ledger.problems).toEqual([]);
  const at = new Map(steps.map((step, index) => [step.id, index]));
  const opened = steps.flatMap((step) => step.opens).sort();
  const closed = steps.flatMap((step) => step.closes).sort();
  expect(closed).toEqual(opened);
  for (const item of ledger.items) expect(at.get(item.closedBy)!).toBeGreaterThan(at.get(item.openedBy)!);
});

holds('no engine starts before oil, coolant, petrol, battery and plugs are seen to', (drawn) => {
  const { steps } = seasonOf(drawn);
  const sheet = steps.filter((step) => step.phase === 'start-up');
  const start = sheet.findIndex((step) => step.stage === 'first-start');
  expect(start).toBeGreaterThan(-1);
  const late = sheet.filter((step, index) => index > start && BEFORE_FIRST_START.includes(step.stage!));
  expect(late.map((step) => step.id)).toEqual([]);
});

holds('the start-up sheet runs through its stages in order, paper alone excepted', (drawn) => {
  const stages = seasonOf(drawn)
    .steps.filter((step) => step.phase === 'start-up' && step.stage !== 'paperwork')
    .map((step) => STAGES.indexOf(step.stage!));
  expect(stages).toEqual([...stages].sort((a, b) => a - b));
});

holds('every step stands behind all that it comes after, and names only steps that are there', (drawn) => {
  const { steps } = seasonOf(drawn);
  const at = new Map(steps.map((step, index) => [step.id, index]));
  expect(at.size).toBe(steps.length);
  for (const [index, step] of steps.entries())
    for (const id of step.after) expect(at.get(id) ?? Infinity, `${step.id} after ${id}`).toBeLessThan(index);
});

holds('no text is left with an unfilled name and every caution is in the table', (drawn) => {
  const { machine, place, household, parts } = drawn;
  for (const step of concreteSteps({ machine, place, household, parts, procedures: LIBRARY })) {
    const text = [step.title, step.detail, step.why, step.doNotRide].join(' ');
    expect(text, step.id).not.toMatch(/[{}]|undefined|NaN|\(see the service manual\)/);
    for (const amount of step.amounts) expect(Number.isFinite(amount.value), step.id).toBe(true);
    for (const supply of step.supplies) expect(supply.amount, step.id).toBeGreaterThan(0);
    for (const caution of step.cautions) expect(CAUTION_IDS, step.id).toContain(caution);
    expect(step.sources.length).toBeGreaterThan(0);
  }
});

holds('days run forward: first day not after last, nothing before what it follows', (drawn) => {
  const { steps } = seasonOf(drawn);
  const byId = new Map(steps.map((step) => [step.id, step]));
  for (const step of steps) {
    expect(step.earliest! <= step.latest!, step.id).toBe(true);
    for (const id of step.after) expect(byId.get(id)!.latest! <= step.latest!, `${step.id} after ${id}`).toBe(true);
  }
});

holds('what the machine has is checked on the start-up sheet and marked as safety-critical', (drawn) => {
  const { machine } = drawn;
  const { steps } = seasonOf(drawn);
  const marked = new Set(
    steps
      .filter((step) => step.phase === 'start-up' && step.safetyCritical)
      .map((step) => step.id.split('.').slice(0, 2).join('.')),
  );
  const expected: [boolean, string][] = [
    [['hydraulic', 'mixed'].includes(machine.chassis.brakes), 'start-up-controls.hydraulic-brakes'],
    [['cable', 'mixed'].includes(machine.chassis.brakes), 'start-up-controls.cable-brakes'],
    [machine.engine.cycle !== 'electric' && machine.chassis.throttle === 'cable', 'start-up-controls.throttle'],
    [machine.chassis.hasLights, 'start-up-controls.lights'],
    [machine.engine.oilL > 0, 'start-up-fluids.oil'],
    [machine.tyres.length > 0, 'start-up-tyres.look'],
    [machine.chassis.track, 'start-up-tyres.track'],
    [true, 'start-up-controls.steering'],
    [machine.engine.cycle !== 'electric', 'start-up-first-start.start'],
    [machine.engine.cycle !== 'electric', 'start-up-leaks.still'],
  ];
  for (const [has, id] of expected) if (has) expect(marked, id).toContain(id);
});

holds('what shuts, plugs or raises the machine is in the ledger whenever its step is on the lay-up sheet', (drawn) => {
  const { steps, ledger } = seasonOf(drawn);
  const items = new Set(ledger.items.map((item) => item.item));
  const pairs: [string, string][] = [
    ['plugs-in.exhaust', 'exhaust-plugged'],
    ['plugs-in.intake', 'intake-plugged'],
    ['battery.out', 'battery-out'],
    ['battery.off', 'battery-disconnected'],
    ['fuel-shut.tap', 'fuel-tap-shut'],
    ['fuel-shut.both-taps', 'fuel-tap-shut'],
    ['fuel-drain.tank', 'fuel-drained'],
    ['fuel-drain.tank-two-taps', 'fuel-drained'],
    ['weight-off.wheels', 'weight-off'],
  ];
  for (const [id, item] of pairs) if (steps.some((step) => step.id === id)) expect(items).toContain(item);
});

holds('lay-up keeps the order of the trade', (drawn) => {
  const { steps } = seasonOf(drawn);
  const index = (id: string) => steps.findIndex((step) => step.id === id || step.id.startsWith(`${id}.`));
  const pairs: [string, string][] = [
    ['wash.dry', 'cover.cover'],
    ['wash.wash', 'lubrication.chain'],
    ['fuel-fill.stabilise', 'fuel-fill.run'],
    ['fuel-fill.run', 'oil.drain'],
    ['oil.circulate', 'cool-down.wait'],
    ['fog-running.intake', 'cool-down.wait'],
    ['cool-down.wait', 'plugs-in.exhaust'],
    ['cool-down.wait', 'fuel-drain.tank'],
    ['cool-down.wait', 'fog-cylinders.four-stroke'],
    ['fog-cylinders.two-stroke', 'plugs-in.exhaust'],
    ['oil.circulate', 'battery.out'],
    ['fog-cylinders.four-stroke', 'battery.out'],
    ['plugs-in.intake', 'cover.cover'],
    ['battery.out', 'cover.cover'],
    ['weight-off.wheels', 'cover.cover'],
  ];
  for (const [first, second] of pairs) {
    if (index(first) < 0 || index(second) < 0) continue;
    expect(index(first), `${first} before ${second}`).toBeLessThan(index(second));
  }
});

test('a random choice of the library still closes what it opens, where its start-up is whole', () => {
  const startUp = LIBRARY.filter((procedure) => procedure.phase === 'start-up');
  const others = LIBRARY.filter((procedure) => procedure.phase !== 'start-up');
  fc.assert(
    fc.property(caseArb, fc.subarray(others), (drawn, chosen) => {
      const { ledger } = seasonOf(drawn, [...chosen, ...startUp]);
      expect(ledger.problems).toEqual([]);
    }),
    { ...RUNS, numRuns: 1000 },
  );
});

test('taking any one closing step away is found on some machine that opens its item', () => {
  for (const procedure of LIBRARY)
    for (const step of procedure.steps.filter((one) => one.closes.length > 0)) {
      const without = LIBRARY.map((one) =>
        one === procedure ? { ...one, steps: one.steps.filter((other) => other !== step) } : one,
      );
      const opener = LIBRARY.find((one) =>
        one.steps.some((other) => other.opens.some((o) => o.item === step.closes[0])),
      );
      expect(opener, step.id).toBeDefined();
      const drawn = fc.sample(caseArb, { numRuns: 400, seed: 7 });
      const found = drawn.some((one) =>
        seasonOf(one, without).ledger.problems.some((problem) => problem.item.startsWith(step.closes[0]!)),
      );
      expect(found, `${procedure.id}.${step.id}`).toBe(true);
    }
});

test('an item found open is closed at start-up although no step of this plan opens it', () => {
  const drawn = caseOf({ restDays: 10, flags: { airbox: true } });
  drawn.machine.asLeft = [{ item: 'exhaust-plugged', where: 'left silencer', since: '2026-10-01' }];
  const { ledger } = seasonOf(drawn);
  expect(ledger.problems).toEqual([]);
  expect(ledger.items).toContainEqual({
    machine: 'machine',
    item: 'exhaust-plugged',
    state: 'exhaust outlets plugged',
    openedBy: 'as left',
    closedBy: 'start-up-plugs.exhaust',
    safetyCritical: true,
    where: 'left silencer',
    since: '2026-10-01',
  });
});

test('an item found open that nothing closes is a problem of the machine file', () => {
  const drawn = caseOf();
  drawn.machine.asLeft = [{ item: 'sidecar-off' }];
  const { problems } = seasonOf(drawn).ledger;
  expect(problems.map(({ file, item }) => ({ file, item }))).toEqual([
    { file: 'machines/machine.yaml', item: 'sidecar-off' },
  ]);
});

test('a start-up step that closes nothing open is not on the sheet', () => {
  const ids = seasonOf(caseOf({ restDays: 10 })).steps.map((step) => step.id);
  expect(ids).not.toContain('start-up-plugs.exhaust');
  expect(ids).not.toContain('start-up-fuel.fresh');
  expect(ids).toContain('start-up-controls.hydraulic-brakes');
});

test('insurance that was suspended is in force again before the first ride', () => {
  const ids = seasonOf(caseOf()).steps.map((step) => step.id);
  expect(ids).toContain('paperwork.pause.1');
  expect(ids.indexOf('start-up-paperwork.in-force.1')).toBeLessThan(ids.indexOf('start-up-first-ride.walking-pace'));
  expect(ids).toContain('start-up-paperwork.in-force.1');
});

test('each suspended paper and each tyre group is an item of its own', () => {
  const drawn = caseOf({
    papers: [
      { kind: 'insurance', pausedOverRest: true },
      { kind: 'registration', pausedOverRest: true },
    ],
  });
  const items = seasonOf(drawn).ledger.items.map((item) => item.item);
  expect(items).toEqual(expect.arrayContaining(['paper-paused:paper-0', 'paper-paused:paper-1']));
  expect(items).toEqual(expect.arrayContaining(['tyre-pressure:position-1', 'tyre-pressure:position-2']));
});

test('positive goes on before negative, and the battery after the plugs are still to come', () => {
  const drawn = caseOf({
    battery: { chemistry: 'agm', care: 'carry-in', keptAt: 'room', connected: false, capacityAh: 12, charges: 1 },
  });
  const { steps } = seasonOf(drawn);
  const fit = steps.find((step) => step.id === 'start-up-battery.fit')!;
  expect(fit.title).toMatch(/positive lead first, negative last/);
  const out = steps.find((step) => step.id === 'battery.out')!;
  expect(out.title).toMatch(/negative lead first/);
});

test('assemblies of the winter strip are closed by its own refit, in winter or at start-up', () => {
  const drawn = caseOf();
  const blank = { ...concreteSteps({ ...drawn, procedures: LIBRARY })[0]!, opens: [], closes: [], after: [] };
  const strip: PlanStep[] = [
    { ...blank, id: 'strip.off.tank', phase: 'winter', opens: ['assembly:tank'] },
    {
      ...blank,
      id: 'strip.off.carburettor',
      phase: 'winter',
      opens: ['assembly:carburettor'],
      after: ['strip.off.tank'],
    },
    {
      ...blank,
      id: 'strip.on.carburettor',
      phase: 'winter',
      closes: ['assembly:carburettor'],
      after: ['strip.off.carburettor'],
    },
    { ...blank, id: 'strip.on.tank', phase: 'start-up', stage: 'refit', closes: ['assembly:tank'] },
  ];
  const steps = settleSteps(drawn.machine, [...concreteSteps({ ...drawn, procedures: LIBRARY }), ...strip]);
  const { items, problems } = buildLedger(drawn.machine, steps, LIBRARY);
  expect(problems).toEqual([]);
  expect(items.filter((item) => item.item.startsWith('assembly:')).map((item) => [item.item, item.closedBy])).toEqual([
    ['assembly:tank', 'strip.on.tank'],
    ['assembly:carburettor', 'strip.on.carburettor'],
  ]);
  const sheet = steps.filter((step) => step.phase === 'start-up').map((step) => step.id);
  expect(sheet.indexOf('strip.on.tank')).toBeGreaterThan(sheet.indexOf('start-up-uncover.cover'));
  expect(sheet.indexOf('strip.on.tank')).toBeLessThan(sheet.indexOf('start-up-fluids.oil'));
});

test('refit steps keep the reverse strip order that they come in', () => {
  const drawn = caseOf();
  const blank = { ...concreteSteps({ ...drawn, procedures: LIBRARY })[0]!, opens: [], closes: [], after: [] };
  const stage: CloseStage = 'refit';
  drawn.machine.asLeft = ['seat', 'tank', 'airbox'].map((id) => ({ item: `assembly:${id}` }));
  const refit = ['airbox', 'tank', 'seat'].map(
    (id): PlanStep => ({ ...blank, id: `strip.on.${id}`, phase: 'start-up', stage, closes: [`assembly:${id}`] }),
  );
  const steps = settleSteps(drawn.machine, [...concreteSteps({ ...drawn, procedures: LIBRARY }), ...refit]);
  expect(steps.map((step) => step.id).filter((id) => id.startsWith('strip.on.'))).toEqual([
    'strip.on.airbox',
    'strip.on.tank',
    'strip.on.seat',
  ]);
});

test('an engine start that the user puts in front of the oil check is found', () => {
  const drawn = caseOf();
  const own = procedureOf({
    id: 'late-oil',
    phase: 'start-up',
    steps: [stepOf({ id: 'look', stage: 'fluids', after: ['start-up-first-start.start'] })],
  });
  const { problems } = seasonOf(drawn, [...LIBRARY, own]).ledger;
  expect(problems.some((problem) => /late-oil\.look .* after the first start/.test(problem.what))).toBe(true);
});

test('facts say what is asked for: a machine without a thing has "none" or false', () => {
  const { machine, place, household, parts } = caseOf({ fuel: undefined, battery: undefined, tyres: [] });
  const facts = machineFacts(machine, place, household, parts);
  expect(facts).toMatchObject({
    fuel: { present: false, delivery: 'none', tap: 'none', choice: 'none' },
    battery: { present: false, care: 'none', family: 'none' },
    tyres: { present: false },
  });
});
