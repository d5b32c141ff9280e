import { expect, test } from 'vitest';
import { addDays } from '../../src/planner/dates.ts';
import type { Machine } from '../../src/planner/household.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { canBeLeftOut, laidUpOn, petrolSeenToOn, withTickedCharges } from '../../src/planner/recorded.ts';
import { readWith } from '../content/helpers.ts';
import { library } from './tasks/library.ts';

const procedures = library();

/** The plan of the workshop's bike with this in its record. */
function planWith(record: Partial<Machine> = {}, asOf = '2026-11-25') {
  const { household } = readWith({}, 'workshop');
  const machines = household!.machines.map((m) => (m.id === 'bike' ? { ...m, ...record } : m));
  const { plan, problems } = planSeason({ ...household!, machines, procedures }, { asOf });
  expect(problems).toEqual([]);
  const bike = plan.machines.find((m) => m.id === 'bike')!;
  return {
    plan,
    bike,
    open: plan.ledger.filter((l) => l.machine === 'bike').map((l) => l.item),
    warnings: bike.warnings,
  };
}

const on = '2026-11-21';

test('what a step left out on purpose would have opened is not open, and the start-up sheet does not close it', () => {
  const as = planWith();
  expect(as.open).toContain('exhaust-plugged');
  const closes = as.bike.steps.find((s) => s.closes.includes('exhaust-plugged'))!.id;
  const { bike, open } = planWith({ skippedSteps: [{ stepId: 'plugs-in.exhaust', date: on, why: 'No plug' }] });
  expect(open).toEqual(as.open.filter((item) => item !== 'exhaust-plugged'));
  expect(bike.steps.map((s) => s.id)).toEqual(
    as.bike.steps.map((s) => s.id).filter((id) => id !== 'plugs-in.exhaust' && id !== closes),
  );
  expect(bike.notes.at(-1)).toMatchObject({
    date: on,
    text: expect.stringMatching(/^Left out on purpose: .*\(No plug\)$/),
  });
});

test('a check before the ride cannot be left out, and the record is told so', () => {
  const stepId = 'start-up-controls.hydraulic-brakes';
  const { bike, warnings } = planWith({ skippedSteps: [{ stepId, date: on }] });
  expect(bike.steps.find((s) => s.id === stepId)?.doNotRide).toBeTruthy();
  expect(warnings.filter((w) => w.about === 'record').map((w) => w.text)).toEqual([
    expect.stringContaining('which cannot be left out'),
  ]);
});

test('a step that there is not is not ticked in silence', () => {
  const { warnings } = planWith({
    doneSteps: [
      { stepId: 'plugs-in.exhausts', date: on },
      { stepId: 'wash.wash', date: on },
      // Of another season's plan: its fuel is not drained in this one, or its tyres were three.
      { stepId: 'fuel-drain.tank', date: on },
      { stepId: 'tyres.pressure.3', date: on },
      { stepId: 'job.gone', date: on },
    ],
  });
  expect(warnings.filter((w) => w.about === 'record').map((w) => w.text)).toEqual([
    expect.stringContaining('"plugs-in.exhausts"'),
  ]);
});

/** Every step of some phases, ticked on a day. */
const ticks = (phases: readonly string[], date: string) =>
  planWith()
    .bike.steps.filter(({ phase }) => phases.includes(phase))
    .map(({ id }) => ({ stepId: id, date }));

const before = (items: readonly string[]) => items.filter((item) => !item.startsWith('assembly:')).sort();

test.each([true, false])('what was done stays open when the jobs that led to it are finished (%s)', (finished) => {
  const as = planWith();
  expect(as.bike.fuel?.choice).toBe('drain');
  const { bike, open, plan } = planWith(
    {
      doneSteps: [...ticks(['lay-up'], '2026-11-14'), ...ticks(['winter'], '2027-02-13')],
      asLeft: [{ item: 'tank', where: 'Tray one', since: '2027-01-16' }],
      jobs: readWith({}, 'workshop').household!.machines[0]!.jobs.map((j) => ({ ...j, done: finished })),
    },
    '2027-03-14',
  );
  expect(before(open)).toEqual(before(as.open));
  expect(open).toContain('fuel-drained');
  expect(bike.steps.filter((s) => s.phase !== 'start-up' && s.phase !== 'look-in' && !s.done).map((s) => s.id)).toEqual(
    [],
  );
  expect(bike.strip?.nowOff ?? []).toEqual([]);
  expect(plan.supplies.filter((s) => s.for.some((f) => f.job !== undefined || f.step === undefined))).toEqual([]);
});

test('what a done step opened stays open where the plan of today would not open it', () => {
  const out = procedures.flatMap((p) =>
    p.steps.filter((s) => s.opens.some((o) => o.item === 'battery-out')).map((s) => `${p.id}.${s.id}`),
  );
  const as = planWith();
  expect(as.open).not.toContain('battery-out');
  const { open, bike } = planWith({ doneSteps: [{ stepId: out[0]!, date: on }] });
  expect(open).toContain('battery-out');
  expect(bike.steps.find((s) => s.closes.includes('battery-out'))?.phase).toBe('start-up');
});

test('ticks of last season do not count again; a job stays finished, what was taken off stays off', () => {
  const [valves, cables] = ['job.valves', 'job.cables'];
  const year = { season: { lastUse: '2027-10-30', firstUse: '2028-04-15', proposed: false, reasons: [] } };
  const { bike } = planWith(
    {
      ...year,
      doneSteps: [
        ...ticks(['lay-up', 'start-up'], '2027-04-10'),
        { stepId: valves, date: '2027-02-13' },
        { stepId: 'strip.off.seat', date: '2027-02-13' },
        { stepId: 'strip.on.seat', date: '2027-02-14' },
        { stepId: 'strip.off.tank', date: '2027-02-13' },
      ],
      skippedSteps: [{ stepId: 'plugs-in.exhaust', date: '2026-11-14' }],
    },
    '2027-10-10',
  );
  const done = bike.steps.filter((s) => s.done).map((s) => s.id);
  expect(done).toEqual(['strip.off.tank']);
  expect(bike.strip!.jobs.map((j) => `job.${j.id}`)).toEqual([cables]);
  expect(bike.strip!.nowOff.map((n) => n.assembly)).toEqual(['tank']);
  expect(bike.steps.map((s) => s.id)).toContain('plugs-in.exhaust');
});

test('a part that is ordered is not bought again, and its lead time written anew moves the job', () => {
  const late = (leadDays: number, ordered: boolean) => {
    const jobs = readWith({}, 'workshop').household!.machines[0]!.jobs.map((j) => ({
      ...j,
      parts: j.id === 'valves' ? [{ what: 'Shims', amount: 1, unit: 'set', leadDays, inStock: false }] : j.parts,
    }));
    const order = planWith({ jobs }).bike.steps.find((s) => s.id.startsWith('strip.order.'))!.id;
    const { bike, plan } = planWith({ jobs, doneSteps: ordered ? [{ stepId: order, date: '2026-11-20' }] : [] });
    return {
      job: bike.steps.find((s) => s.id === 'job.valves')!.date!,
      bought: plan.supplies.some((s) => s.what === 'Shims'),
    };
  };
  expect(late(10, false).bought).toBe(true);
  expect(late(10, true).bought).toBe(false);
  expect(late(100, true).job >= '2027-02-28').toBe(true);
});

test('a refit that was made in winter is checked before the ride, its job finished or not', () => {
  const { household } = readWith({}, 'workshop');
  const [machine] = household!.machines;
  const record = {
    assemblies: machine!.assemblies.map((a) => ({ ...a, safetyCritical: a.id === 'tank' })),
    doneSteps: [
      { stepId: 'strip.off.tank', date: '2026-11-20' },
      { stepId: 'strip.on.tank', date: '2026-11-22' },
    ],
  };
  const check = (jobs: Machine['jobs']) =>
    planWith({ ...record, jobs }).bike.steps.find((s) => s.id === 'strip.check.tank');
  expect(check(machine!.jobs)?.torques).not.toEqual([]);
  const finished = check(machine!.jobs.map((j) => ({ ...j, done: true })));
  expect(finished).toMatchObject({ phase: 'start-up', done: false, doNotRide: expect.any(String) });
});

test('a tick that names its season counts in that one alone, whatever its day', () => {
  // Laid up weeks before the ninety days from which an undated season is guessed, and a tick of last winter made late.
  const early = { stepId: 'plugs-in.exhaust', date: '2026-06-01', season: '2026-11' };
  const old = { stepId: 'wash.wash', date: '2026-11-20', season: '2025-11' };
  const { bike } = planWith({ doneSteps: [early, old] });
  expect(bike.steps.filter((s) => s.done).map((s) => s.id)).toEqual(['plugs-in.exhaust']);
  const left = planWith({ skippedSteps: [{ stepId: 'plugs-in.exhaust', date: on, season: '2025-11' }] });
  expect(left.open).toContain('exhaust-plugged');
});

test('a record of a season later than the one in the file is told of, and nothing of it counts', () => {
  const { bike, warnings } = planWith({ doneSteps: [{ stepId: 'wash.wash', date: on, season: '2027-11' }] });
  expect(bike.steps.filter((s) => s.done)).toEqual([]);
  expect(warnings.filter((w) => w.about === 'record').map((w) => w.act)).toEqual([
    'Write the next lastUse and firstUse in machines/bike.yaml.',
  ]);
});

test('a charge that is ticked is a charge: the dates go on from it, and one logged as well counts once', () => {
  const readings = [{ date: '2026-11-21', volts: 12.25, temperatureC: 4, restedH: 400 }];
  const before = planWith({ readings }).bike;
  const step = before.steps.find((s) => s.id.startsWith('look-in-charge.charge.'))!;
  const doneSteps = [{ stepId: step.id, date: '2026-11-24' }];
  const after = planWith({ readings, doneSteps }).bike.battery!.charges;
  expect(after[0]?.date ?? '9999').not.toBe(before.battery!.charges[0]!.date);
  const logged = [{ date: '2026-11-24', toPct: 100 }];
  expect(planWith({ readings, charged: logged }).bike.battery!.charges).toEqual(after);
  expect(planWith({ readings, charged: logged, doneSteps }).bike.battery!.charges).toEqual(after);
});

const ticked = (record: Partial<Machine>) => {
  const { household } = readWith({}, 'workshop');
  const bike = household!.machines.find((m) => m.id === 'bike')!;
  return withTickedCharges({ ...bike, charged: [], ...record }, procedures).charged;
};
const charge = (date: string, season?: string) => ({ stepId: 'look-in-charge.charge.1', date, season });

test('a ticked charge counts once beside one that was logged within three days, and by its season', () => {
  const logged = [{ date: '2026-12-10', toPct: 90 }];
  const days = (date: string) => ticked({ charged: logged, doneSteps: [charge(date)] }).map((c) => c.date);
  expect(days('2026-12-07')).toEqual(['2026-12-10']);
  expect(days('2026-12-13')).toEqual(['2026-12-10']);
  expect(days('2026-12-06')).toEqual(['2026-12-06', '2026-12-10']);
  expect(days('2026-12-14')).toEqual(['2026-12-10', '2026-12-14']);
  expect(ticked({ doneSteps: [charge('2026-12-06', '2025-11')] })).toEqual([]);
  expect(ticked({ doneSteps: [charge('2020-12-06')] })).toEqual([]);
  // Only steps that are repeated for each charge are charges.
  expect(ticked({ doneSteps: [{ stepId: 'look-in.look', date: '2026-12-06' }] })).toEqual([]);
  expect(ticked({ doneSteps: [charge('2026-12-06')], battery: undefined })).toEqual([]);
});

// The start-up charges full, whatever the battery is kept at over the rest.
test('a ticked charge of the start-up, or the whole start-up, is a full charge; other steps of it are none', () => {
  const on = '2027-04-02';
  const of = (stepId: string, record: Partial<Machine> = {}) =>
    ticked({ doneSteps: [{ stepId, date: on }], ...record });
  for (const stepId of [
    'start-up-battery.full',
    'start-up-battery.full-away',
    'start-up-electric-battery.full',
    'start-up',
  ])
    expect(of(stepId), stepId).toEqual([{ date: on, toPct: 100 }]);
  for (const stepId of ['start-up-battery.key-on', 'start-up-battery.fit', 'battery.charge', 'lay-up'])
    expect(of(stepId), stepId).toEqual([]);
  const logged = [{ date: '2027-04-01', toPct: 90 }];
  expect(of('start-up-battery.full', { charged: logged })).toEqual(logged);
});

test('only work of the lay-up, its swap included, and of look-ins can be left out', () => {
  const phases = ['lay-up', 'swap', 'look-in', 'winter', 'start-up', undefined] as const;
  expect(phases.filter(canBeLeftOut)).toEqual(['lay-up', 'swap', 'look-in']);
});

test('work is ticked by its own step or with the whole lay-up, and what is only got ready for it is not', () => {
  const doneOn = (...steps: string[]) =>
    laidUpOn({ doneSteps: steps.map((stepId, i) => ({ stepId, date: i === 0 ? on : '2027-01-01' })) }, procedures, [
      'addFuel',
      'drained',
    ]);
  expect(doneOn('fuel-fill.fill')).toBe(on);
  expect(doneOn('fuel-drain.tank')).toBe(on);
  expect(doneOn('lay-up')).toBe(on);
  expect(doneOn('fuel-fill.stabilise', 'fuel-drain.cans', 'start-up', 'fuel-leave.low')).toBeUndefined();
  expect(doneOn()).toBeUndefined();
  // Its own day goes before that of the whole sheet.
  expect(doneOn('lay-up', 'fuel-drain.tank')).toBe('2027-01-01');
});

test('petrol that stood is seen to by a step of the start-up that is for it alone, or with the whole start-up', () => {
  const seen = (...steps: string[]) =>
    petrolSeenToOn(
      {
        ...readWith({}, 'workshop').household!.machines.find((m) => m.id === 'bike')!,
        doneSteps: steps.map((stepId) => ({ stepId, date: on })),
      },
      procedures,
    );
  for (const step of ['start-up-fuel.stood', 'start-up-fuel.old', 'start-up']) expect(seen(step)).toBe(on);
  expect(seen('start-up-fuel.hoses', 'lay-up', 'fuel-fill.fill')).toBeUndefined();
});

test('petrol that is ticked as filled is no longer to be added', () => {
  expect(planWith().bike.fuel!.settled).toBeUndefined();
  const { bike } = planWith({ doneSteps: [{ stepId: 'fuel-fill.fill', date: on }] });
  expect(bike.fuel).toMatchObject({ choice: 'fill', settled: 'done' });
});

// Definition: salt that has been rinsed off is no longer on the machine. How bad the air is without it is the model's own affair.
test('a rinse that is ticked, or the whole lay-up, takes the road salt off for this season', () => {
  const salted = { roadSalt: { exposed: true, washed: false } };
  const air = (record: Partial<Machine>) => {
    const { bike, warnings } = planWith(record);
    return {
      steel: bike.corrosion.steelUmPerYear,
      said: warnings.some(({ text }) => text.startsWith('Road salt is on the machine over the rest')),
      rinse: bike.steps.find(({ id }) => id === 'wash.salt')?.done,
    };
  };
  const clean = air({ roadSalt: { exposed: false, washed: true } });
  const dirty = air(salted);
  expect(dirty.steel).toBeGreaterThan(clean.steel);
  expect([dirty.said, dirty.rinse]).toEqual([true, false]);
  for (const stepId of ['wash.salt', 'lay-up'])
    expect(air({ ...salted, doneSteps: [{ stepId, date: on }] })).toEqual({ ...clean, rinse: true });
  // Another step's tick, and the rinse of last season, leave it on.
  expect(air({ ...salted, doneSteps: [{ stepId: 'wash.wash', date: on }] })).toEqual(dirty);
  expect(air({ ...salted, doneSteps: [{ stepId: 'wash.salt', date: on, season: '2025-11' }] })).toEqual(dirty);
});

// Definition: the rinse of the lay-up is ahead until the lay-up's days are over, 21 days after the last use.
test('salt is reckoned as rinsed while the rinse is planned, and as on the machine once its days are past or it is left out', () => {
  const salted = { roadSalt: { exposed: true, washed: false } };
  const { lastUse } = planWith().bike.season;
  const said = (asOf: string, record: Partial<Machine> = {}) => {
    const { bike } = planWith({ ...salted, ...record }, asOf);
    return [bike.corrosion.steelUmPerYear, bike.warnings.find(({ about }) => about === 'corrosion')?.level];
  };
  const washed = planWith({ roadSalt: { exposed: true, washed: true } }).bike.corrosion.steelUmPerYear;
  const dirty = expect.toSatisfy((steel: number) => steel > washed);
  expect(said(lastUse)).toEqual([washed, 'note']);
  expect(said(addDays(lastUse, 21))).toEqual([washed, 'note']);
  expect(said(addDays(lastUse, 22))).toEqual([dirty, 'warning']);
  expect(said(lastUse, { skippedSteps: [{ stepId: 'wash.salt', date: lastUse }] })).toEqual([dirty, 'warning']);
});

test('a bag that is left out on purpose gives way to a cover, and look-ins look under it', () => {
  const inCoastalAir = (skipped: string[], power = false) => {
    const { household } = readWith({}, 'workshop');
    const bike = household!.machines.find((m) => m.id === 'bike')!;
    const machine = {
      ...bike,
      battery: power ? { ...bike.battery!, care: 'maintainer' as const } : bike.battery,
      skippedSteps: skipped.map((stepId) => ({ stepId, date: bike.season.lastUse })),
    };
    const places = household!.places.map((place) => ({
      ...place,
      chlorideMgM2D: 300,
      sulphurDioxideMgM2D: 60,
      power,
      enclosure: { ...place.enclosure, airChangesPerH: 3 },
    }));
    const { plan, problems } = planSeason(
      { ...household!, places, machines: [machine], procedures },
      { asOf: bike.season.lastUse },
    );
    expect(problems).toEqual([]);
    const ids = plan.machines[0]!.steps.map(({ id }) => id);
    return {
      closed: ids.filter((id) => id === 'cover.bag' || id === 'cover.cover'),
      looks: [...new Set(ids.filter((id) => id.startsWith('look-in.')).map((id) => id.split('.')[1]!))],
      open: plan.ledger.map(({ item }) => item).filter((item) => item === 'bag-closed' || item === 'cover-on'),
      bought: plan.supplies.find(({ what }) => what === 'Desiccant units')?.amount,
      units: plan.machines[0]!.corrosion.desiccant,
      care: plan.machines[0]!.battery?.care,
      why: plan.machines[0]!.corrosion.protection.reason,
    };
  };
  const bag = inCoastalAir([]);
  expect([bag.closed, bag.open]).toEqual([['cover.bag'], ['bag-closed']]);
  expect(bag.looks).toContain('desiccant');
  for (const id of ['round', 'tyres']) expect(bag.looks).not.toContain(id);
  // The larger number is the safe one.
  expect(bag.bought).toBe(Math.max(bag.units!.din55474Units, bag.units!.milStd2073Units));
  const cover = inCoastalAir(['cover.bag']);
  expect([cover.closed, cover.open, cover.bought]).toEqual([['cover.cover'], ['cover-on'], undefined]);
  expect(cover.looks).toContain('round');
  expect(cover.looks).not.toContain('desiccant');
  // Common practice: a charger's gas does not stay in a bag.
  const charging = inCoastalAir([], true);
  expect([charging.care, charging.closed, charging.units]).toEqual(['maintainer', ['cover.cover'], undefined]);
  expect(charging.why).toContain('no closed bag around a battery on its maintainer');
});
