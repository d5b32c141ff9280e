/** The promise of the project, held over thousands of generated machines: all that is opened is closed, in safe order. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { CloseStage, MachineKind, Procedure } from '../../../src/planner/household.ts';
import { buildLedger, STAGES, settleSteps } from '../../../src/planner/ledger/index.ts';
import { BEFORE_FIRST_START } from '../../../src/planner/ledger/start-up.ts';
import type { PlanStep } from '../../../src/planner/season-plan.ts';
import { caution } from '../../../src/planner/tasks/cautions.ts';
import { CAUTION_IDS, concreteSteps, machineFacts } from '../../../src/planner/tasks/index.ts';
import { BURNING } from '../tasks/burning.ts';
import { type Case, caseArb, caseOf, procedureOf, stepOf } from '../tasks/generate.ts';
import { library } from '../tasks/library.ts';

const LIBRARY = library();

function seasonOf({ machine, place, household, parts }: Case, procedures: readonly Procedure[] = LIBRARY) {
  const steps = settleSteps(machine, concreteSteps({ machine, place, household, parts, procedures }));
  return { machine, steps, ledger: buildLedger(machine, steps, procedures) };
}
type Season = ReturnType<typeof seasonOf>;

let kept: Season[] | undefined;
/** Made once, within the first test that asks: what is made while the file is read, no mutant is held against. */
const seasons = (): Season[] =>
  (kept ??= fc.sample(caseArb, { numRuns: 3000, seed: 20261025 }).map((drawn) => seasonOf(drawn)));

/** Says in words what is wrong with a season, or nothing. */
type Fault = (season: Season) => string[];
const promises = new Map<string, Fault>();
const holds = (promise: string, fault: Fault) => promises.set(promise, fault);

const places = (steps: readonly PlanStep[]) => new Map(steps.map((step, index) => [step.id, index]));
const sheetOf = (steps: readonly PlanStep[]) => steps.filter((step) => step.phase === 'start-up');

holds('every item opened is closed exactly once, by a later step', ({ steps, ledger }) => {
  const at = places(steps);
  const opened = steps.flatMap((step) => step.opens).sort();
  const closed = steps.flatMap((step) => step.closes).sort();
  return [
    ...ledger.problems.map((problem) => problem.what),
    ...(opened.join() === closed.join() ? [] : [`opened ${opened}, closed ${closed}`]),
    ...ledger.items
      .filter((item) => !(at.get(item.closedBy)! > at.get(item.openedBy)!))
      .map((item) => `${item.item} closed by ${item.closedBy} before ${item.openedBy}`),
  ];
});

holds('what was left open is told as the step that left it says', ({ ledger }) =>
  ledger.items.flatMap(({ item, openedBy, state, safetyCritical }) => {
    const [procedure, name] = openedBy.split('.');
    const step = LIBRARY.find(({ id }) => id === procedure)?.steps.find(({ id }) => id === name);
    const [base, ...rest] = item.split(':');
    const open = step?.opens.find((candidate) => candidate.item === base);
    if (open === undefined) return [];
    const told = rest.length === 0 ? open.state : `${open.state} (${rest.join(':')})`;
    return state === told && safetyCritical === open.safetyCritical ? [] : [`${item} by ${openedBy}: ${state}`];
  }),
);

holds('no engine starts before oil, coolant, petrol, battery and plugs are seen to', ({ steps }) => {
  const sheet = sheetOf(steps);
  const start = sheet.findIndex((step) => step.stage === 'first-start');
  if (start < 0) return ['no first start on the sheet'];
  return sheet.slice(start).flatMap((step) => (BEFORE_FIRST_START.includes(step.stage!) ? [step.id] : []));
});

holds('the start-up sheet runs through its stages in order, paper alone excepted', ({ steps }) => {
  const sheet = sheetOf(steps).filter((step) => step.stage !== 'paperwork');
  return sheet.flatMap((step, n) =>
    n > 0 && STAGES.indexOf(sheet[n - 1]!.stage!) > STAGES.indexOf(step.stage!) ? [step.id] : [],
  );
});

holds('every step stands behind all that it comes after, and names only steps that are there', ({ steps }) => {
  const at = places(steps);
  return [
    ...(at.size === steps.length ? [] : ['an id stands twice']),
    ...steps.flatMap((step, n) =>
      step.after.flatMap((id) => ((at.get(id) ?? Infinity) < n ? [] : [`${step.id} after ${id}`])),
    ),
  ];
});

holds('no text is left with an unfilled name, no amount without a number, no caution without its row', ({ steps }) =>
  steps.flatMap((step) => [
    ...(/[{}]|undefined|NaN|\(see the service manual\)/.test(
      [step.title, step.detail ?? '', step.why, step.doNotRide ?? ''].join(' '),
    )
      ? [`${step.id}: ${step.title}`]
      : []),
    ...step.amounts.filter((amount) => !Number.isFinite(amount.value)).map((amount) => `${step.id}: ${amount.name}`),
    ...step.supplies.filter((supply) => !(supply.amount > 0)).map((supply) => `${step.id}: ${supply.what}`),
    ...step.cautions.filter((id) => !CAUTION_IDS.includes(id)).map((id) => `${step.id}: ${id}`),
    ...(step.sources.length > 0 ? [] : [`${step.id}: no source`]),
  ]),
);

holds('days run forward: first day not after last, nothing due after what follows it', ({ steps }) => {
  const byId = new Map(steps.map((step) => [step.id, step]));
  return steps.flatMap((step) => [
    ...(step.earliest! <= step.latest! ? [] : [`${step.id}: ${step.earliest} to ${step.latest}`]),
    ...step.after.filter((id) => !(byId.get(id)!.latest! <= step.latest!)).map((id) => `${step.id} before ${id}`),
  ]);
});

const controls = (names: Record<MachineKind, string>) =>
  Object.fromEntries(Object.entries(names).map(([kind, name]) => [kind, `start-up-controls.${name}`])) as typeof names;
// How each kind is steered and its engine governed: by definition of the kind.
const THROTTLE = controls({
  motorcycle: 'throttle',
  scooter: 'throttle',
  quad: 'throttle-lever',
  'snow-machine': 'throttle-lever',
  'side-by-side': 'throttle-pedal',
  car: 'throttle-pedal',
  tractor: 'throttle-hand',
  mower: 'throttle-mower',
});
const OTHERS = 'lights-others';
const LIGHTS = controls({
  motorcycle: 'lights',
  scooter: 'lights',
  car: 'lights-car',
  quad: OTHERS,
  'snow-machine': OTHERS,
  'side-by-side': OTHERS,
  tractor: OTHERS,
  mower: OTHERS,
});
const STEERING: Partial<Record<MachineKind, string[]>> = {
  motorcycle: ['start-up-controls.steering', 'start-up-first-ride.walking-pace'],
  scooter: ['start-up-controls.steering', 'start-up-first-ride.walking-pace'],
  quad: ['start-up-controls.steering-bars', 'start-up-first-ride.walking-pace'],
  'snow-machine': ['start-up-controls.steering-bars', 'start-up-first-ride.walking-pace-snow'],
  'side-by-side': ['start-up-controls.steering-wheel', 'start-up-first-ride.walking-pace-car'],
  car: ['start-up-controls.steering-wheel', 'start-up-first-ride.walking-pace-car'],
  tractor: ['start-up-controls.steering-wheel', 'start-up-first-ride.walking-pace-tractor'],
};

holds('what the machine has is checked on the start-up sheet and marked as safety-critical', ({ machine, steps }) => {
  const { chassis, engine } = machine;
  const marked = new Set(
    sheetOf(steps)
      .filter((step) => step.safetyCritical)
      .map((step) => step.id.split('.').slice(0, 2).join('.')),
  );
  const burns = engine.cycle !== 'electric';
  const expected: [boolean, string][] = [
    [['hydraulic', 'mixed'].includes(chassis.brakes), 'start-up-controls.hydraulic-brakes'],
    [['cable', 'mixed'].includes(chassis.brakes), 'start-up-controls.cable-brakes'],
    [burns && chassis.throttle === 'cable', THROTTLE[machine.kind]],
    [chassis.hasLights, LIGHTS[machine.kind]],
    [engine.oilL > 0, 'start-up-fluids.oil'],
    [machine.tyres.length > 0, 'start-up-tyres.look'],
    [
      machine.tyres.length > 0,
      steps.some((s) => s.id === 'tyres.pressure.1') ? 'start-up-tyres.pressure' : 'start-up-tyres.short-rest',
    ],
    [chassis.track, 'start-up-tyres.track'],
    ...(STEERING[machine.kind] ?? []).map((id): [boolean, string] => [
      true,
      burns ? id : id.replace(/^start-up-first-ride\..*/, 'start-up-electric-ride.walking-pace'),
    ]),
    [engine.cycle === 'four-stroke', 'start-up-first-start.start'],
    [engine.cycle === 'two-stroke', 'start-up-first-start.start-two-stroke'],
    [machine.kind === 'mower' && burns, 'start-up-controls.mower'],
    [machine.kind === 'mower' && burns, 'start-up-first-start.stops-mower'],
    [machine.kind === 'mower' && !burns, 'start-up-controls.mower-electric'],
    [machine.kind === 'tractor', `start-up-controls.power-take-off${burns ? '' : '-electric'}`],
    [!burns, 'start-up-drive-battery.look'],
    [!burns, 'start-up-electric.power'],
    [machine.kind === 'tractor' && burns, 'start-up-first-start.stops-tractor'],
    [burns, 'start-up-leaks.still'],
  ];
  return expected.filter(([has, id]) => has && !marked.has(id)).map(([, id]) => id);
});

holds('nothing that is said of an electric machine speaks of a combustion engine', ({ machine, steps }) => {
  if (machine.engine.cycle !== 'electric') return [];
  // Apart from what somebody has written: services, a clutch; and from a swap, which is told of two machines.
  const given = machine.chassis.clutch === 'cable' || machine.chassis.clutch === 'hydraulic' ? /clutch/i : /^$/;
  return steps.flatMap(({ id, part, title, detail = '', why, doNotRide = '', tools, supplies, cautions }) => {
    const said = [part, title, detail, why, doNotRide, ...tools, ...supplies.map(({ what }) => what)];
    const minded = cautions.flatMap((name) => [caution(name)!.title, caution(name)!.text]);
    return [...said, ...minded]
      .filter((text) => BURNING.test(text) && !given.test(text) && !/^(?:swap|services-due)\./.test(id))
      .map((text) => `${id}: ${text}`);
  });
});

// The safety instructions of mowers' manuals (ANSI B71.1), from memory: the plug lead is off before a hand goes near the blade, and
// goes on with hands and tools clear, before the engine is to run.
holds('a hand is near the blade of a mower only while its plug lead is off', ({ machine, steps, ledger }) => {
  if (machine.kind !== 'mower' || machine.engine.cycle === 'electric') return [];
  const at = places(steps);
  const leads = ledger.items.filter(({ item }) => item === 'plug-lead-off');
  const [lead] = leads;
  if (lead === undefined || leads.length > 1) return [`the lead comes off ${leads.length} times`];
  const off = at.get(lead.openedBy)!;
  const on = at.get(lead.closedBy)!;
  const near = ['deck-and-implements.deck', 'start-up-controls.mower'].filter((id) => at.has(id));
  const start = steps.findIndex(({ id }) => /^start-up-first-start\.start/.test(id));
  return [
    ...near.filter((id) => !(off < at.get(id)! && at.get(id)! < on)),
    ...(on < start ? [] : ['the engine is started with the lead off']),
    // Last of all: what is done after it no longer brings a hand to the machine's underside, belts or tyres.
    ...sheetOf(steps)
      .filter(({ stage }) => ['tyres', 'controls', 'leaks'].includes(stage!))
      .map(({ id }) => id)
      .filter((id) => !(at.get(id)! < on)),
    ...steps.slice(on + 1, start).flatMap(({ id, cautions }) => (cautions.includes('blade') ? [id] : [])),
    ...['start-up-plugs.fogged-mower', 'start-up-first-start.turn-mower'].filter((id) => at.get(id)! > on),
  ];
});

holds(
  'what shuts, plugs or raises the machine is in the ledger whenever its step is on the sheet',
  ({ steps, ledger }) => {
    const items = new Set(ledger.items.map((item) => item.item));
    const ids = new Set(steps.map((step) => step.id));
    const pairs: [string, string][] = [
      ['plugs-in.exhaust', 'exhaust-plugged'],
      ['plugs-in.intake', 'intake-plugged'],
      ['battery.out', 'battery-out'],
      ['battery.off', 'battery-disconnected'],
      ['drive-battery.out', 'drive-battery-out'],
      ['drive-battery.out-lead', 'drive-battery-out'],
      ['fuel-shut.tap', 'fuel-tap-shut'],
      ['fuel-shut.both-taps', 'fuel-tap-shut'],
      ['fuel-drain.tank', 'fuel-drained'],
      ['fuel-drain.tank-two-taps', 'fuel-drained'],
      ['fuel-drain.film', 'oil-in-tank'],
      ['weight-off.wheels', 'weight-off'],
      ['weight-off.wheels-four', 'weight-off'],
      ['weight-off.track', 'weight-off'],
    ];
    return pairs.filter(([id, item]) => ids.has(id) && !items.has(item)).map(([id]) => id);
  },
);

const TRADE_ORDER: readonly [string, string][] = [
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
  // Water is kept from a bay that is open, hands from a blade that has current.
  ['drive-battery.out', 'wash.wash-electric'],
  ['drive-battery.out', 'deck-and-implements.deck'],
  ['drive-battery.half', 'cover.cover'],
  ['start-up-drive-battery.look', 'start-up-drive-charge.lithium'],
  ['start-up-drive-battery.fit', 'start-up-electric.power'],
  ['start-up-drive-battery.fit-lead', 'start-up-electric.power'],
  ['start-up-drive-charge.lithium', 'start-up-electric-ride.walking-pace'],
  ['weight-off.wheels', 'cover.cover'],
  ['start-up-plugs.exhaust', 'start-up-first-start.start'],
  ['start-up-fluids.oil', 'start-up-first-start.turn'],
  ['start-up-controls.power-take-off', 'start-up-first-start.turn'],
  ['start-up-first-start.turn-mower', 'start-up-first-start.plug-lead'],
  ['cool-down.wait', 'deck-and-implements.mower-deck'],
  ['deck-and-implements.lead-off', 'lubrication.belt'],
  ['start-up-paperwork.in-force.1', 'start-up-first-ride.walking-pace'],
  ['start-up-paperwork.back-on-road', 'start-up-first-ride.walking-pace-car'],
  ['start-up-paperwork.in-force.1', 'start-up-first-ride.walking-pace-snow'],
  ['start-up-paperwork.back-on-road', 'start-up-first-ride.walking-pace-tractor'],
  ['battery.water', 'battery.charge'],
  // No charger beside an open tank: common practice. A battery is read once the starter has turned for the last time.
  ['start-up-battery.maintainer', 'start-up-fuel.old'],
  ['start-up-battery.maintainer', 'start-up-fuel.fresh'],
  ['start-up-battery.water', 'start-up-battery.full'],
  ['start-up-battery.full', 'start-up-battery.charger-off'],
  ['start-up-battery.charger-off', 'start-up-fuel.hoses'],
  ['start-up-battery.charger-off', 'start-up-fuel.fresh'],
  ['start-up-battery.full-kept', 'start-up-fuel.stood'],
  ['start-up-battery.full-away', 'start-up-battery.back'],
  ['start-up-battery.back', 'start-up-plugs.fogged'],
  // Oil in the can before petrol is in the tank: common practice of premix.
  ['start-up-fuel.premix', 'start-up-fuel.fresh'],
  ['start-up-fuel.premix', 'start-up-fuel.old'],
  ['start-up-fuel.premix', 'start-up-fuel.stood'],
  ['fuel-fill.premix', 'fuel-fill.fill'],
  ['fuel-fill.draw-off', 'fuel-fill.stabilise'],
  ['fuel-drain.tank', 'battery.charge'],
  ['fuel-drain.tank-two-taps', 'battery.maintainer'],
  ['fuel-shut.bowls', 'battery.charge'],
  ['fog-cylinders.two-stroke', 'battery.rest-voltage'],
  ['fog-cylinders.four-stroke', 'battery.rest-voltage'],
  ['coolant.swap', 'battery.rest-voltage'],
  ['battery.off', 'battery.charge'],
  // A track's tension is measured with the rear raised: common practice of its manuals.
  ['start-up-tyres.track', 'start-up-tyres.down-track'],
  ['fuel-fill.fill', 'fuel-fill.run-snow'],
  ['fuel-fill.run-snow', 'fuel-shut.bowls'],
  ['start-up-fuel.rinse', 'start-up-fuel.fresh'],
  // A switch that fails starts the engine.
  ['start-up-first-start.outside', 'start-up-first-start.switches'],
  ['start-up-first-start.turn', 'start-up-first-start.switches-wheels'],
  ['start-up-leaks.still', 'start-up-first-start.switches'],
  ['start-up-paperwork.in-force.1', 'start-up-drive-charge.lithium'],
];

holds('lay-up and start-up keep the order of the trade', ({ steps }) => {
  const at = places(steps);
  return TRADE_ORDER.filter(([first, second]) => at.get(first)! > at.get(second)!).map((pair) => pair.join(' before '));
});

test('3,000 generated seasons keep every one of these promises', () => {
  for (const season of seasons())
    for (const [promise, fault] of promises) {
      const faults = fault(season);
      if (faults.length > 0) expect({ promise, machine: season.machine, faults }).toEqual({ faults: [] });
    }
  expect({ seasons: seasons().length, promises: promises.size }).toEqual({ seasons: 3000, promises: 12 });
});

test('each pair of that order stands together on some of the generated sheets', () => {
  const missing = TRADE_ORDER.filter(
    (pair) => !seasons().some(({ steps }) => pair.every((id) => steps.some((step) => step.id === id))),
  );
  expect(missing).toEqual([]);
});

test('every step of the library stands on some of the generated sheets', () => {
  const seen = new Set(seasons().flatMap(({ steps }) => steps.map((step) => step.id.split('.').slice(0, 2).join('.'))));
  const all = LIBRARY.flatMap((procedure) => procedure.steps.map((step) => `${procedure.id}.${step.id}`));
  expect(all.filter((id) => !seen.has(id))).toEqual([]);
});

test('a random choice of the library still closes what it opens, where its start-up is whole', () => {
  const startUp = LIBRARY.filter((procedure) => procedure.phase === 'start-up');
  const others = LIBRARY.filter((procedure) => procedure.phase !== 'start-up');
  fc.assert(
    fc.property(caseArb, fc.subarray(others), (drawn, chosen) => {
      const { ledger } = seasonOf(drawn, [...chosen, ...startUp]);
      expect(ledger.problems).toEqual([]);
    }),
    { numRuns: 1000, seed: 20261025 },
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

test('a blade that is looked at after a short rest has its plug lead taken off for it, and put on again', () => {
  const items = (restDays: number, skipped: string[] = []) => {
    const drawn = caseOf({ kind: 'mower', restDays });
    drawn.machine.skippedSteps = skipped.map((stepId) => ({ stepId, date: '2026-10-25' }));
    const { ledger, steps } = seasonOf(drawn);
    expect(ledger.problems).toEqual([]);
    const goesOn = new Map(steps.map((step) => [step.id, step.goesOnFrom]));
    expect(goesOn.get('start-up-first-start.choke')).toBe('start-up-first-start.plug-lead');
    return ledger.items.filter(({ item }) => item === 'plug-lead-off').map(({ openedBy }) => openedBy);
  };
  expect(items(10)).toEqual(['start-up-controls.lead-off']);
  expect(items(100)).toEqual(['deck-and-implements.lead-off']);
  expect(items(100, ['deck-and-implements.lead-off'])).toEqual(['start-up-controls.lead-off']);
});

test('work goes on from the step before one that is not on the sheet', () => {
  const { steps } = seasonOf(caseOf({ kind: 'motorcycle' }));
  const ids = steps.map(({ id }) => id);
  // No plug lead was taken off, so none is put on.
  expect(ids).not.toContain('start-up-first-start.plug-lead');
  expect(steps.find(({ id }) => id === 'start-up-first-start.choke')!.goesOnFrom).toBe('start-up-first-start.switches');
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

test('the negative lead is first off and last on', () => {
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
