import { expect, test } from 'vitest';
import { addDays, daysBetween } from '../../../src/planner/dates.ts';
import type { Household, Ticked } from '../../../src/planner/household.ts';
import { settleSteps } from '../../../src/planner/ledger/index.ts';
import { fill } from '../../../src/planner/tasks/amounts.ts';
import {
  AMOUNTS,
  CAUTIONS,
  caution,
  concreteSteps,
  lookInDates,
  mergeProcedures,
  unknownAmounts,
  windowsOf,
} from '../../../src/planner/tasks/index.ts';
import { sortSteps } from '../../../src/planner/tasks/sort.ts';
import { caseOf, procedureOf, stepOf } from './generate.ts';
import { library } from './library.ts';

const LIBRARY = library();
const season = (lastUse: string, firstUse: string) => ({ lastUse, firstUse, proposed: false, reasons: [] });

test('an assumed amount is told as one, and marked among those used', () => {
  const given = { oil: { value: 3, unit: 'L' }, normalPressure: { value: 225, unit: 'kPa' } };
  const assumed = {
    oil: { ...given.oil, assumed: true as const },
    normalPressure: { ...given.normalPressure, assumed: true as const },
  };
  expect(fill('Oil: {oil}', given, 'metric').text).toBe('Oil: 3.0 L');
  expect(fill('Oil: {oil}', assumed, 'metric')).toEqual({
    text: 'Oil: about 3.0 L (assumed: the manual’s figure goes before it)',
    used: [{ name: 'oil', value: 3, unit: 'L', assumed: true }],
    missing: [],
  });
  // 225 kPa / 6.894757 = 32.6 psi.
  expect(fill('Set {normalPressure}, cold', assumed, 'metric').text).toMatch(
    /^Set what the placard or manual says \(about 225 kPa( \(3[23][^)]*\))? is usual for this kind\), cold$/,
  );
});

test('names in a text are written out in the household’s units and kept beside it as data', () => {
  const amounts = { oil: { value: 3, unit: 'L' }, machine: { text: 'Juniper' } };
  expect(fill('Fill {oil} of oil into {machine}', amounts, 'metric')).toEqual({
    text: 'Fill 3.0 L of oil into Juniper',
    used: [{ name: 'oil', value: 3, unit: 'L' }],
    missing: [],
  });
  // 3 L of 0.946353 L a US quart: 3.17.
  expect(fill('{oil}', amounts, 'us').text).toBe('3.2 US qt');
});

test('a name without a value says where to look and is reported', () => {
  const filled = fill('Drain {drained}', {}, 'metric');
  expect(filled.text).toBe('Drain (see the service manual)');
  expect(filled.missing).toEqual(['drained']);
});

test('names that no amount provides are found, and those of another repetition too', () => {
  const steps = [
    stepOf({ id: 'a', title: 'Fill {oill}' }),
    stepOf({ id: 'b', title: 'Set {setPressure}' }),
    stepOf({ id: 'c', title: 'Set {setPressure}', each: 'tyre' }),
  ];
  expect(unknownAmounts({ steps })).toEqual(['oill', 'setPressure']);
});

test('each name of the table of amounts is there once', () => {
  const names = AMOUNTS.map((row) => row.name);
  expect(new Set(names).size).toBe(names.length);
});

test('every caution says whom to defer to, and none is there twice', () => {
  expect(new Set(CAUTIONS.map((row) => row.id)).size).toBe(CAUTIONS.length);
  for (const row of CAUTIONS) {
    expect(row.text.length, row.id).toBeGreaterThan(40);
    expect(row.defer.length, row.id).toBeGreaterThan(10);
  }
  expect(caution('carbon-monoxide')!.text).toMatch(/not with the door open/);
  expect(caution("the user's own words")).toBeUndefined();
});

test('each caution of the table stands with some step of the library', () => {
  const used = new Set(LIBRARY.flatMap((procedure) => procedure.steps.flatMap((step) => step.cautions)));
  expect(CAUTIONS.map((row) => row.id).filter((id) => !used.has(id))).toEqual([]);
});

test("a user's procedure with the id of a library one takes its place; another is added", () => {
  const own = procedureOf({ id: 'oil', phase: 'lay-up', steps: [stepOf({ id: 'mine' })], file: 'own/oil.yaml' });
  const added = procedureOf({ id: 'sidecar', phase: 'lay-up', steps: [stepOf({ id: 'bolt' })] });
  const merged = mergeProcedures(LIBRARY, [own, added]);
  expect(merged.length).toBe(LIBRARY.length + 1);
  expect(merged.find((one) => one.id === 'oil')).toMatchObject({ steps: own.steps, file: 'own/oil.yaml' });
  expect(merged.find((one) => one.id === 'oil')!.replaces?.file).toBe('procedures/oil.yaml');
  expect(merged.find((one) => one.id === 'sidecar')!.replaces).toBeUndefined();
});

test('the order of files does not change the steps', () => {
  const drawn = caseOf();
  const ids = (procedures: typeof LIBRARY) => concreteSteps({ ...drawn, procedures }).map((step) => step.id);
  expect(ids([...LIBRARY].reverse())).toEqual(ids(LIBRARY));
});

test('steps repeated for tyre groups have their own number, pressure and item', () => {
  const steps = concreteSteps({ ...caseOf(), procedures: LIBRARY }).filter((step) =>
    step.id.startsWith('tyres.pressure'),
  );
  expect(steps.map(({ id, title, opens }) => ({ id, title, opens }))).toEqual([
    {
      id: 'tyres.pressure.1',
      title: 'Tyres position 1: set 2.60 bar (38 psi), cold',
      opens: ['tyre-pressure:position-1'],
    },
    {
      id: 'tyres.pressure.2',
      title: 'Tyres position 2: set 2.90 bar (42 psi), cold',
      opens: ['tyre-pressure:position-2'],
    },
  ]);
});

test('two tyre groups of the same name are two items', () => {
  const drawn = caseOf();
  for (const tyre of drawn.parts.tyres) tyre.position = 'Rear!';
  const opens = concreteSteps({ ...drawn, procedures: LIBRARY }).flatMap((step) => step.opens);
  expect(opens.filter((item) => item.startsWith('tyre-'))).toEqual(['tyre-pressure:rear', 'tyre-pressure:rear-2']);
});

test('charges fall on their own day, keep their number, and may wait to their latest day', () => {
  const drawn = caseOf();
  drawn.parts.battery!.charges = drawn.parts.battery!.charges.map((charge, n) => ({ ...charge, occurrence: n + 2 }));
  const steps = concreteSteps({ ...drawn, procedures: LIBRARY }).filter((step) => step.id.startsWith('look-in-charge'));
  expect(steps.map(({ id, date, earliest, latest }) => ({ id, date, earliest, latest }))).toEqual(
    drawn.parts.battery!.charges.map((charge, n) => ({
      id: `look-in-charge.charge.${n + 2}`,
      date: charge.date,
      earliest: charge.date,
      latest: charge.earliest,
    })),
  );
});

test('a step done on the record is marked as done', () => {
  const drawn = caseOf();
  drawn.machine.doneSteps = [{ stepId: 'wash.wash', date: '2026-10-26' }];
  const steps = concreteSteps({ ...drawn, procedures: LIBRARY });
  expect(steps.filter((step) => step.done).map((step) => step.id)).toEqual(['wash.wash']);
});

test('a service that another step covers is not asked for twice', () => {
  const drawn = caseOf({
    services: [
      { id: 'engine-oil', pulledIn: true, lastDone: 400 },
      { id: 'valves', pulledIn: true, lastDone: 400 },
    ],
  });
  const titles = concreteSteps({ ...drawn, procedures: LIBRARY }).map((step) => step.title);
  expect(titles.filter((title) => title.startsWith('Due:'))).toEqual(['Due: valves']);
});

test('a service that an open winter job of the same id does is not asked for at lay-up', () => {
  const drawn = caseOf({ services: [{ id: 'valves', pulledIn: true, lastDone: 400 }] });
  const job = {
    id: 'valves',
    name: 'Valves',
    assemblies: [],
    minutes: 60,
    parts: [],
    tools: [],
    cautions: [],
    notes: [],
  };
  const asked = (done: boolean, id = 'valves') => {
    drawn.machine.jobs = [{ ...job, id, after: [], needs: { stand: false, bench: false }, done }];
    return concreteSteps({ ...drawn, procedures: LIBRARY }).some((step) => step.title === 'Due: valves');
  };
  expect(asked(false)).toBe(false);
  expect(asked(true)).toBe(true);
  // Another job does not do it.
  expect(asked(false, 'cables')).toBe(true);
});

test('papers are asked for where they run out by a month after the first use', () => {
  const drawn = caseOf({ restDays: 100, papers: [] });
  const { firstUse } = drawn.machine.season;
  const paper = { id: 'permit', what: 'Permit', kind: 'other', pausedOverRest: false } as const;
  const asked = (date: string) => {
    drawn.machine.paperwork = [{ ...paper, date }];
    return concreteSteps({ ...drawn, procedures: LIBRARY }).filter((step) => step.title.startsWith('Permit')).length;
  };
  expect(asked(firstUse)).toBe(2);
  expect(asked('2030-01-01')).toBe(0);
});

test('drained petrol is used up by its own date, not by the first use', () => {
  const drawn = caseOf({ flags: { drain: true } });
  const step = concreteSteps({ ...drawn, procedures: LIBRARY }).find((one) => one.id === 'disposal.petrol')!;
  expect(step.latest).toBe(drawn.parts.fuel!.drainedUseBy);
});

test('a step that says how long the engine runs lasts no less', () => {
  const drawn = caseOf();
  drawn.parts.fuel!.runMinutes = 31.2;
  const step = concreteSteps({ ...drawn, procedures: LIBRARY }).find((one) => one.id === 'fuel-fill.run')!;
  expect(step.title).toContain('32 min');
  expect(step.minutes).toBe(32);
});

test('supplies of computed amounts carry the amount', () => {
  const supplies = concreteSteps({ ...caseOf(), procedures: LIBRARY }).flatMap((step) => step.supplies);
  expect(supplies).toContainEqual({ what: 'Fuel stabiliser', amount: 68, unit: 'mL' });
  expect(supplies).toContainEqual({ what: 'Engine oil, the grade the manual names', amount: 3, unit: 'L' });
});

test('coolant is tested before the first frost in the store, even if that comes before the last use', () => {
  const drawn = caseOf({ coolant: { strength: undefined, replaceL: undefined, enough: null, old: false }, frost: -10 });
  drawn.parts.coolant!.testBy = '2026-10-14';
  const step = concreteSteps({ ...drawn, procedures: LIBRARY }).find((one) => one.id === 'coolant.test')!;
  // Frost from 15 October: the day before is the last.
  expect(step.latest).toBe('2026-10-14');
  expect(step.earliest! < step.latest!).toBe(true);
  // As long as the frost is to come it is not too late: up to three weeks after the first use, when the season is given up.
  expect(step.useUntil).toBe('2027-05-01');
});

// A ride after the fill burns what was filled for the rest: dose and fill on the last day of use or after it, in the lay-up's
// three weeks (common practice), then the run, so that treated petrol stands in line and carburettor.
test('petrol is dosed, filled and run in from the last day of use on, in this order, in both hemispheres', () => {
  for (const [lastUse, layUpEnd] of [
    ['2026-10-25', '2026-11-15'],
    ['2027-05-02', '2027-05-23'],
  ] as const) {
    const drawn = caseOf({ lastUse });
    const steps = concreteSteps({ ...drawn, procedures: LIBRARY }).filter(({ id }) => id.startsWith('fuel-fill.'));
    expect(steps.map(({ id }) => id.slice('fuel-fill.'.length))).toEqual(['stabilise', 'fill', 'run']);
    for (const step of steps) expect([step.earliest, step.latest], step.id).toEqual([lastUse, layUpEnd]);
    expect(steps[1]!.after).toContain('fuel-fill.stabilise');
    expect(steps[2]!.after).toContain('fuel-fill.fill');
  }
});

test('nothing that runs the engine on its own petrol comes before the treated run, and taps are shut after it', () => {
  const steps = concreteSteps({ ...caseOf({ cycle: 'two-stroke', restDays: 167 }), procedures: LIBRARY });
  const at = (id: string) => steps.findIndex((step) => step.id === id);
  for (const later of ['fog-running.intake', 'oil.drain', 'oil.circulate', 'cool-down.wait', 'fuel-shut.vacuum'])
    expect([later, at(later) < 0 || at(later) > at('fuel-fill.run')]).toEqual([later, true]);
  expect(at('fog-running.intake')).toBeGreaterThan(0);
  expect(at('fuel-shut.bowls')).toBeGreaterThan(at('cool-down.wait'));
});

// "Use, mix or dispose" of the design: what is too old is taken out before a tap is opened, and before anything is filled.
test('petrol that is too old is drained and fresh filled before the tap is turned on', () => {
  for (const leave of [false, true]) {
    const ids = (verdict: 'use' | 'mix' | 'dispose') =>
      concreteSteps({ ...caseOf({ verdict, flags: { leave } }), procedures: LIBRARY })
        .filter(({ phase }) => phase === 'start-up')
        .map(({ id }) => id);
    const old = ids('dispose');
    expect(old).toContain('start-up-fuel.old');
    expect(old).not.toContain('start-up-fuel.stood');
    for (const later of ['start-up-fuel.fresh', 'start-up-plugs.tap', 'start-up-plugs.bowls-vacuum'])
      expect([later, old.indexOf(later) > old.indexOf('start-up-fuel.old')]).toEqual([later, true]);
    for (const verdict of ['use', 'mix'] as const) {
      expect(ids(verdict)).toContain('start-up-fuel.stood');
      expect(ids(verdict)).not.toContain('start-up-fuel.old');
    }
  }
});

test('a tank that is left low is neither dosed nor filled nor drained, and its bowls are seen to', () => {
  const ids = concreteSteps({ ...caseOf({ flags: { leave: true } }), procedures: LIBRARY }).map(({ id }) => id);
  expect(ids).toContain('fuel-leave.low');
  expect(ids).toContain('fuel-shut.bowls');
  expect(ids.filter((id) => /^fuel-(fill|drain)/.test(id))).toEqual([]);
});

test('two taps are both shut and both drained', () => {
  const fuel = {
    delivery: 'carburettor',
    tankL: 20,
    tankMaterial: 'plastic',
    lined: false,
    taps: { kind: 'manual', count: 2 },
    bowls: 2,
    premix: false,
  } as const;
  const ids = (drain: boolean) =>
    concreteSteps({ ...caseOf({ fuel, flags: { drain } }), procedures: LIBRARY }).map((step) => step.id);
  expect(ids(false)).toContain('fuel-shut.both-taps');
  expect(ids(false)).not.toContain('fuel-shut.tap');
  expect(ids(true)).toContain('fuel-drain.tank-two-taps');
  expect(ids(true)).not.toContain('fuel-drain.tank');
});

test('a vacuum tap is never shut, and is left at ON, not PRIME', () => {
  const steps = concreteSteps({ ...caseOf(), procedures: LIBRARY });
  expect(steps.find((step) => step.id === 'fuel-shut.vacuum')!.title).toMatch(/ON or RES, never at PRIME/);
  expect(steps.flatMap((step) => step.opens)).not.toContain('fuel-tap-shut');
});

test('a lithium battery is never charged without the caution on cold', () => {
  const battery = {
    chemistry: 'lifepo4',
    care: 'visits',
    keptAt: 'machine',
    connected: false,
    capacityAh: 4,
    charges: 1,
  } as const;
  const steps = concreteSteps({ ...caseOf({ battery }), procedures: LIBRARY });
  const charging = steps.filter((step) => step.needs.charger);
  expect(charging.length).toBeGreaterThan(1);
  for (const step of charging) expect(step.cautions, step.id).toContain('lithium-cold');
});

// The safety instructions of mowers' and tractors' manuals, from memory.
test('a hand comes near the blades of a tractor with the ignition off, and the plug lead goes on again last', () => {
  const steps = concreteSteps({ ...caseOf({ kind: 'tractor' }), procedures: LIBRARY });
  for (const id of ['deck-and-implements.mower-deck', 'start-up-controls.power-take-off']) {
    const { title, detail, cautions } = steps.find((step) => step.id === id)!;
    expect(title, id).toMatch(/^Ignition off, key out: /);
    expect(detail, id).toMatch(/spark plug lead off.*(lead on again last|until hands and tools are out)/s);
    expect(cautions, id).toContain('blade');
  }
});

test('who has no blade is told of none', () => {
  for (const kind of ['motorcycle', 'scooter', 'snow-machine', 'quad', 'side-by-side', 'car'] as const) {
    const drawn = caseOf({ kind });
    const steps = settleSteps(drawn.machine, concreteSteps({ ...drawn, procedures: LIBRARY }));
    const told = steps.filter(({ cautions, title }) => cautions.includes('blade') || /blade|cutter/.test(title));
    expect(told.map(({ id }) => id)).toEqual([]);
  }
});

test('every step that runs an engine carries the caution on carbon monoxide', () => {
  const running = [
    'fuel-fill.run',
    'fuel-fill.run-snow',
    'fuel-fill.run-snow-air',
    'oil.circulate',
    'fog-running.intake',
    'coolant.swap',
    'coolant.renew',
  ];
  running.push('start-up-first-start.outside', 'start-up-first-start.start', 'start-up-first-start.warm');
  running.push(...['wheels', 'track', 'tractor', 'mower'].map((kind) => `start-up-first-start.outside-${kind}`));
  running.push('start-up-first-start.start-two-stroke', 'start-up-first-start.thermostat-snow');
  running.push('start-up-first-start.switches', 'start-up-first-start.switches-wheels');
  running.push(
    ...['stops', 'stops-car', 'stops-tether', 'stops-mower', 'stops-tractor'].map((id) => `start-up-first-start.${id}`),
  );
  for (const id of running) {
    const [procedure, name] = id.split('.');
    const step = LIBRARY.find((one) => one.id === procedure)!.steps.find((one) => one.id === name)!;
    expect(step.cautions, id).toContain('carbon-monoxide');
  }
});

test('every step that handles petrol carries the caution on its vapour', () => {
  const handles = LIBRARY.filter((one) => one.id.startsWith('fuel-') || one.id === 'start-up-fuel').flatMap((one) =>
    one.steps.filter((step) => step.opens.length > 0 || /[Dd]rain|[Ff]ill|Mix/.test(step.title)),
  );
  expect(handles.length).toBeGreaterThan(8);
  for (const step of handles) {
    if (step.id === 'untreated' || step.id.startsWith('run')) continue;
    expect(step.cautions, step.id).toContain('petrol-vapour');
  }
});

test('lay-up ends before start-up begins, however short the rest', () => {
  for (const days of ['2026-11-02', '2026-11-08', '2026-12-01', '2027-04-10', '2029-04-10']) {
    const { layUpEnd, startUpFrom, firstUse } = windowsOf(season('2026-11-01', days));
    expect(layUpEnd <= startUpFrom, days).toBe(true);
    expect(startUpFrom <= firstUse, days).toBe(true);
  }
  expect(windowsOf(season('2026-10-25', '2027-04-10'))).toMatchObject({
    layUpEnd: '2026-11-15',
    startUpFrom: '2027-03-20',
  });
});

test('look-ins are monthly between lay-up and start-up, and share the day of a charge that is near', () => {
  const drawn = caseOf();
  const charge = drawn.parts.battery!.charges[0]!;
  const always = { ...drawn.household, away: [], hoursByWeekday: hours(1, 1) };
  drawn.parts.battery!.charges = [{ ...charge, date: '2027-01-20' }];
  expect(lookInDates(drawn.machine, always, drawn.parts)).toEqual(['2026-12-15', '2027-01-20', '2027-02-15']);
  // So does one of a battery whose maintainer does not keep it; one that lies in a room is charged there.
  const kept = (care: 'maintainer' | 'carry-in', keptAt: 'machine' | 'room') =>
    lookInDates(drawn.machine, always, { battery: { ...drawn.parts.battery!, care, keptAt } })[1];
  expect([kept('maintainer', 'machine'), kept('carry-in', 'room')]).toEqual(['2027-01-20', '2027-01-15']);
  drawn.machine.season.firstUse = '2026-11-20';
  expect(lookInDates(drawn.machine, always, drawn.parts)).toEqual([]);
});

test('a voltage that is logged about the day of a look-in is its reading, and no other step of it', () => {
  const drawn = caseOf();
  drawn.parts.battery = { ...drawn.parts.battery!, care: 'visits', charges: [] };
  const household = { ...drawn.household, away: [], hoursByWeekday: hours(1, 1) };
  const done = (...dates: string[]) => {
    const readings = dates.map((date) => ({ date, volts: 12.6, temperatureC: 5, restedH: 12 }));
    const machine = { ...drawn.machine, readings };
    return concreteSteps({ ...drawn, household, machine, procedures: LIBRARY })
      .filter((step) => step.done)
      .map(({ id, date }) => `${id} ${date}`);
  };
  // Look-ins on the 15th of December, January and February; twelve days on either side stand for the month's look.
  expect(done()).toEqual([]);
  expect(done('2026-12-15')).toEqual(['look-in.volts.1 2026-12-15']);
  expect(done('2026-12-03', '2027-01-27')).toEqual(['look-in.volts.1 2026-12-15', 'look-in.volts.2 2027-01-15']);
  expect(done('2026-12-02', '2027-01-28')).toEqual([]);
});

/** A voltage read after a charge is that of the charge: TM 9-6115-730-24 WP 0050 wants hours of rest before a reading. */
test('on the day of a charge the battery is read once, before it, and the look-ins keep their numbers', () => {
  const drawn = caseOf();
  const [charge] = drawn.parts.battery!.charges;
  drawn.parts.battery = {
    ...drawn.parts.battery!,
    care: 'visits',
    keptAt: 'machine',
    charges: [{ ...charge!, date: '2027-01-20' }],
  };
  const household = { ...drawn.household, away: [], hoursByWeekday: hours(1, 1) };
  const steps = concreteSteps({ ...drawn, household, procedures: LIBRARY });
  const readings = steps.filter((step) => step.reading === 'V' && step.id.startsWith('look-in'));
  expect(readings.map(({ id, date }) => `${id} ${date}`)).toEqual([
    expect.stringMatching(/^look-in-charge\.charge\.\d+ 2027-01-20$/),
    'look-in.volts.1 2026-12-15',
    'look-in.volts.3 2027-02-15',
  ]);
  expect(steps.filter(({ id }) => id.startsWith('look-in.round.')).map(({ date }) => date)).toEqual([
    '2026-12-15',
    '2027-01-20',
    '2027-02-15',
  ]);
});

/** A semicolon parts what stands open from one another on the sheets. */
test('no state that a step opens has a semicolon of its own', () => {
  const states = LIBRARY.flatMap(({ steps }) => steps.flatMap(({ opens }) => opens.map(({ state }) => state)));
  expect(states.filter((state) => state.includes(';'))).toEqual([]);
});

/** A winch draws some hundred amperes from the battery; a reading wants 3 h of rest (TM 9-6115-730-24 WP 0050). */
test.each(['four-stroke', 'electric'] as const)('the winch of a %s quad is run before its battery rests', (cycle) => {
  const drawn = caseOf();
  const machine = { ...drawn.machine, kind: 'quad' as const, engine: { ...drawn.machine.engine, cycle } };
  const steps = concreteSteps({ ...drawn, machine, procedures: LIBRARY });
  const at = (id: string) => steps.findIndex((step) => step.id === id);
  const rest = cycle === 'electric' ? 'battery.rest-electric' : 'battery.rest';
  expect(at('deck-and-implements.winch')).toBeGreaterThanOrEqual(0);
  expect(steps[at(rest)]!.after).toContain('deck-and-implements.winch');
  expect(at('deck-and-implements.winch')).toBeLessThan(at(rest));
});

/** What most owners of an automatic, of a ride-on mower without a loader, of a quad without a winch have to tick. */
test.each([
  ['car', /^(Clutch pedal|Hydraulic clutch|Clutch fluid), where it has /],
  ['tractor', /^(Clutch|Clutch cable|Hydraulic oil|Loader, linkage and implement), where it has /],
  ['quad', /^Winch, where it has one/],
] as const)('what not every %s has is asked for where it has it', (kind, where) => {
  const drawn = caseOf();
  const clutch = kind === 'car' ? ('hydraulic' as const) : ('cable' as const);
  const machine = { ...drawn.machine, kind, chassis: { ...drawn.machine.chassis, clutch } };
  const titles = concreteSteps({ ...drawn, machine, procedures: LIBRARY }).map(({ title }) => title);
  const asked = { car: /clutch/i, tractor: /clutch|hydraulic oil|loader/i, quad: /winch/i }[kind];
  const found = titles.filter((title) => asked.test(title) && !/each seat, clutch|Starter/.test(title));
  expect(found.length).toBeGreaterThan(0);
  expect(found.filter((title) => !where.test(title))).toEqual([]);
});

test('a count that was assumed says so in the step and in what is bought', () => {
  const drawn = caseOf();
  const fogged = (targets: string[]) => {
    const assumptions = targets.map((target) => ({ ...drawn.machine.assumptions[0]!, target }));
    const machine = { ...drawn.machine, engine: { ...drawn.machine.engine, cylinders: 2 }, assumptions };
    return concreteSteps({ ...drawn, machine, procedures: LIBRARY }).find(({ id }) => id === 'start-up-plugs.fogged')!;
  };
  expect(fogged([]).title).toMatch(/^Cylinders were oiled \(2\): /);
  expect(fogged(['engine.cylinders']).title).toMatch(/^Cylinders were oiled \(2, assumed\): /);
  expect(fogged(['engine.cylinders']).supplies).toEqual([
    { what: 'Spark plugs', amount: 2, unit: 'pieces', about: true },
  ]);
});

test('a look that is ticked is the look-in nearest to it, with all its steps, and no other', () => {
  const drawn = caseOf();
  drawn.parts.battery = { ...drawn.parts.battery!, care: 'visits', charges: [] };
  const household = { ...drawn.household, away: [], hoursByWeekday: hours(1, 1) };
  const looks = (...dates: string[]) => {
    const doneSteps = dates.map((date) => ({ stepId: 'look-in', date }));
    const machine = { ...drawn.machine, doneSteps };
    return concreteSteps({ ...drawn, household, machine, procedures: LIBRARY }).filter(
      (step) => step.phase === 'look-in',
    );
  };
  // Look-ins on the 15th of December, January and February, each ticked by a look up to twelve days from it.
  const days = (steps: { date?: string | undefined }[]) => [...new Set(steps.map(({ date }) => date))];
  const steps = looks('2027-01-20');
  expect(days(steps)).toEqual(['2026-12-15', '2027-01-15', '2027-02-15']);
  expect(days(steps.filter(({ done }) => done))).toEqual(['2027-01-15']);
  expect(days(steps.filter(({ done }) => !done))).toEqual(['2026-12-15', '2027-02-15']);
  expect(looks('2026-12-02').some(({ done }) => done)).toBe(false);
});

test('a charge that is overdue says so in its step', () => {
  const drawn = caseOf();
  const [charge] = drawn.parts.battery!.charges;
  const step = (over: object) => {
    drawn.parts.battery!.charges = [{ ...charge!, date: '2027-01-14', earliest: '2027-01-11', ...over }];
    return concreteSteps({ ...drawn, procedures: LIBRARY }).find(({ id }) => id.startsWith('look-in-charge'))!;
  };
  expect(step({ overdue: true })).toMatchObject({
    date: '2027-01-14',
    overdue: '2027-01-11',
    detail: expect.stringMatching(/^Latest day: 14 January 2027, overdue since 11 January 2027\./),
  });
  const late = step({});
  expect([late.overdue, late.detail!.slice(0, 40)]).toEqual([
    undefined,
    expect.stringMatching(/^Latest day: 14 January 2027\./),
  ]);
});

test('look-ins fall on days with hours for them, the same for all machines', () => {
  const drawn = caseOf();
  drawn.parts.battery!.charges = [];
  const dates = (household: Partial<Household>) =>
    lookInDates(drawn.machine, { ...drawn.household, away: [], ...household }, drawn.parts);
  const weekends = dates({ hoursByWeekday: hours(0, 4) });
  expect(weekends).toEqual(['2026-12-13', '2027-01-16', '2027-02-14']);
  drawn.machine.season.lastUse = '2026-10-29';
  expect(dates({ hoursByWeekday: hours(0, 4) })).toEqual(weekends);
  // The 15th of December is a Tuesday: Monday and Wednesday are as near, and the earlier one is taken.
  const besides = { ...hours(0, 0), monday: 1, wednesday: 1 };
  expect(dates({ hoursByWeekday: besides })[0]).toBe('2026-12-14');
  // Monday the 14th of a household that has Thursdays alone otherwise: the 17th is two days off, the 12th three.
  expect(dates({ hoursByWeekday: { ...hours(0, 4), thursday: 1, sunday: 0 } })[0]).toBe('2026-12-17');
  const away = [{ from: '2026-12-10', to: '2026-12-18' }];
  expect(dates({ hoursByWeekday: hours(0, 4), away })[0]).toBe('2026-12-19');
  // A household that gives no hours, or is away for the whole month, is still told of the month's look.
  expect(dates({ hoursByWeekday: hours(0, 0) })[0]).toBe('2026-12-15');
  expect(dates({ hoursByWeekday: hours(0, 4), away: [{ from: '2026-12-01', to: '2026-12-31' }] })[0]).toBe(
    '2026-12-15',
  );
});

/** Covered storage is inspected monthly: US Army administrative storage (TM 9-2330-357-14&P §4-64). Six weeks are no month. */
test('no machine rests unseen for six weeks, whatever its days', () => {
  const drawn = caseOf();
  drawn.parts.battery!.charges = [];
  const longest = (lastUse: string, firstUse: string, weekday: number, doneSteps: Ticked[] = []) => {
    drawn.machine.season = { ...drawn.machine.season, lastUse, firstUse };
    const machine = { ...drawn.machine, doneSteps };
    const { layUpEnd, startUpFrom } = windowsOf(machine.season);
    const home = { ...drawn.household, away: [], hoursByWeekday: hours(weekday, 4) };
    const seen = [doneSteps[0]?.date ?? layUpEnd, ...lookInDates(machine, home, drawn.parts), startUpFrom];
    return Math.max(...seen.slice(1).map((day, i) => daysBetween(seen[i]!, day)));
  };
  for (let day = 0; day < 35; day++) {
    const lastUse = addDays('2026-10-01', day);
    for (const weekday of [0, 1]) {
      expect(longest(lastUse, addDays('2027-04-01', day), weekday), lastUse).toBeLessThan(42);
      // The lay-up of one day, three weeks before its last day.
      const done = [{ stepId: 'lay-up', date: lastUse }];
      expect(longest(lastUse, addDays('2027-04-01', 2 * day), weekday, done), lastUse).toBeLessThan(42);
    }
  }
});

/** Each month's look has its own days: one that passed unseen does not make the later ones late. */
test('a look-in is to be done about its own day, whatever became of the one before', () => {
  const drawn = caseOf();
  drawn.parts.battery = { ...drawn.parts.battery!, care: 'visits', keptAt: 'machine', charges: [] };
  const steps = concreteSteps({ ...drawn, procedures: LIBRARY }).filter(({ id }) => id.startsWith('look-in.'));
  expect(new Set(steps.map(({ date }) => date)).size).toBeGreaterThan(2);
  for (const { id, date, earliest, latest } of steps) {
    expect(earliest! <= date!, `${id}: from ${earliest} for ${date}`).toBe(true);
    expect(latest! >= date!, `${id}: by ${latest} for ${date}`).toBe(true);
  }
});

function hours(weekday: number, weekend: number): Household['hoursByWeekday'] {
  const [monday, tuesday, wednesday, thursday, friday] = [weekday, weekday, weekday, weekday, weekday];
  return { monday, tuesday, wednesday, thursday, friday, saturday: weekend, sunday: weekend };
}

test('what stops the ride is told with its amounts', () => {
  const [first] = LIBRARY;
  const step = { ...first!.steps[0]!, when: {}, each: undefined, closes: [], doNotRide: 'Under {zero} in the store.' };
  const procedure = { ...first!, id: 'own', when: {}, steps: [step, { ...step, id: 'other', doNotRide: undefined }] };
  const found = concreteSteps({ ...caseOf(), procedures: [procedure] });
  expect(found.map(({ doNotRide }) => doNotRide)).toEqual(['Under 0 °C in the store.', undefined]);
  expect(found[0]!.amounts.map(({ name }) => name)).toContain('zero');
});

test('steps in a ring are named and not lost', () => {
  const [step] = concreteSteps({ ...caseOf(), procedures: LIBRARY });
  const ring = sortSteps([
    { ...step!, id: 'a', after: ['b'] },
    { ...step!, id: 'b', after: ['a'] },
    { ...step!, id: 'c', after: [] },
  ]);
  expect(ring.ring).toEqual(['a', 'b']);
  expect(ring.steps.map((one) => one.id)).toEqual(['c', 'a', 'b']);
});

test('treated petrol alone is run in', () => {
  const steps = (stabiliser: boolean) => {
    const { household, ...drawn } = caseOf({});
    const fuel = { ...drawn.parts.fuel!, choice: 'fill' as const, doseML: stabiliser ? 60 : undefined };
    const parts = { ...drawn.parts, fuel };
    return concreteSteps({ ...drawn, household, parts, procedures: LIBRARY });
  };
  const runs = (stabiliser: boolean) => steps(stabiliser).some(({ id }) => id === 'fuel-fill.run');
  expect([runs(true), runs(false)]).toEqual([true, false]);
});

test('a start-up ticked as a whole holds its first ride from the day of first use on', () => {
  const firstRide = (date: string) => {
    const drawn = caseOf({});
    const machine = { ...drawn.machine, doneSteps: [{ stepId: 'start-up', date }] };
    return concreteSteps({ ...drawn, machine, procedures: LIBRARY }).filter((step) => step.phase === 'start-up');
  };
  const { firstUse } = caseOf({}).machine.season;
  const before = firstRide('2027-03-01');
  expect(new Set(before.filter((s) => s.stage === 'first-ride').map((s) => s.done))).toEqual(new Set([false]));
  expect(new Set(before.filter((s) => s.stage !== 'first-ride').map((s) => s.done))).toEqual(new Set([true]));
  expect(new Set(firstRide(firstUse).map((s) => s.done))).toEqual(new Set([true]));
});
