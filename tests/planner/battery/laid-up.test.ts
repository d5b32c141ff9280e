/** What the ticks of a lay-up say of the battery: from when it is full, and until when its lead drew on it. */
import { expect, test } from 'vitest';
import { planBatteries } from '../../../src/planner/battery/index.ts';
import type { Battery, BatteryChemistry, Machine } from '../../../src/planner/household.ts';
import { planSeason } from '../../../src/planner/plan.ts';
import { withTickedBattery } from '../../../src/planner/recorded.ts';
import { readWith } from '../../content/helpers.ts';
import { library } from '../tasks/library.ts';
import { battery, contexts, exactly, household, machine, place, sineStore } from './world.ts';

const procedures = library();
const STORE = sineStore(20, 0, 0);

/** A battery of 10 Ah at 20 °C that loses 3 % in 30 days by itself, 90 % full at the last use on 25 October. */
function planned(
  asOf: string,
  more: Partial<Machine> = {},
  own: Partial<Battery> = {},
  kind: BatteryChemistry = 'agm',
) {
  const moth = machine('Moth', 'shed', {
    battery: battery(kind, 10, {
      care: 'visits',
      connected: false,
      selfDischargePctPerMonth: exactly(3),
      startPct: exactly(90),
      drainMA: exactly(10),
      ...own,
    }),
    ...more,
  });
  const home = household([moth]);
  const { plans, warnings } = planBatteries(home, asOf, contexts(home, STORE));
  const plan = plans.get('Moth')!;
  const pct = (date: string) => plan.paths!.expected.find((day) => day.date === date)!.stateOfChargePct;
  return { plan, pct, warnings };
}

test('a lead–acid battery is full on the day of its lay-up charge, and no charge of the rest is counted', () => {
  const { plan, pct } = planned('2026-11-10', { chargedAtLayUp: '2026-11-04', leadOffOn: '2026-10-25' });
  expect(pct('2026-11-04')).toBe(100);
  // 3 % in 30 days by hand.
  expect(pct('2026-12-04')).toBeCloseTo(97, 6);
  expect(plan.charges.every(({ occurrence }, i) => occurrence === i + 1)).toBe(true);
  // Charged while it was still in use, it is full as the rest begins.
  expect(planned('2026-11-10', { chargedAtLayUp: '2026-10-20' }).pct('2026-10-25')).toBe(100);
  // What is not done yet is not reckoned with.
  expect(
    planned('2026-11-03', { chargedAtLayUp: '2026-11-04', leadOffOn: '2026-10-25' }).pct('2026-11-04'),
  ).toBeCloseTo(89, 6);
});

test('a lithium battery is left by its lay-up as the rest begins with it, not full', () => {
  const at = { startPct: exactly(55) };
  const { pct } = planned('2026-12-10', { chargedAtLayUp: '2026-12-04', leadOffOn: '2026-12-04' }, at, 'lifepo4');
  expect(pct('2026-12-03')).toBe(0);
  expect(pct('2026-12-04')).toBe(55);
});

test('a reading soon after it is held against a full battery', () => {
  const readings = [{ date: '2026-12-04', volts: 12.2, temperatureC: 20, restedH: 24 }];
  const { plan } = planned('2026-12-05', { readings, chargedAtLayUp: '2026-12-02', leadOffOn: '2026-10-25' });
  expect(plan.calibration?.suggests).toMatch(/within 7 days of a full charge/);
});

test('a lead draws on the battery until it is ticked that it is off, once the days of the lay-up are past', () => {
  // 10 mA of 10 Ah: 2.4 % a day. The lay-up has three weeks, to 15 November.
  const perDay = 2.4 + 0.1;
  expect(planned('2026-11-15').pct('2026-11-15')).toBeCloseTo(90 - 21 * 0.1, 6);
  const late = planned('2026-11-20');
  expect(late.pct('2026-11-19')).toBeCloseTo(90 - 25 * perDay, 6);
  // From today on it is planned to come off.
  expect(late.plan.charges[0]).toMatchObject({ overdue: true });
  expect(late.plan.careReason).toMatch(/Nothing says that it is off: until now it is reckoned on\.$/);
  expect(late.plan.leadStillOn).toBe(true);
  const ticked = planned('2026-11-20', { leadOffOn: '2026-10-27' });
  expect(ticked.pct('2026-10-27')).toBeCloseTo(90 - 2 * perDay, 6);
  expect(ticked.pct('2026-11-20')).toBeCloseTo(90 - 2 * perDay - 24 * 0.1, 6);
  expect(ticked.plan.careReason).not.toMatch(/Nothing says/);
  expect(ticked.plan.leadStillOn).toBeUndefined();
});

test('of a battery whose lead was never said to be off, a low reading is laid to what draws on it', () => {
  const readings = [
    { date: '2026-11-01', volts: 12.6, temperatureC: 20, restedH: 24 },
    { date: '2026-12-04', volts: 11.9, temperatureC: 20, restedH: 24 },
  ];
  const own = { drainMA: exactly(0.1) };
  expect(planned('2026-12-05', { readings }, own).plan.calibration?.suggests).toMatch(/with the leads on/);
  const off = { readings, leadOffOn: '2026-10-25' };
  expect(planned('2026-12-05', off, own).plan.calibration?.suggests).toMatch(/though nothing is connected/);
});

test('what is read with the lead off says nothing of what drew on the battery before', () => {
  // Off after five days of 2.4 %, then 12.6 V and 12.0 V five weeks apart: it loses far more than 3 % in 30 days.
  const readings = [
    { date: '2026-11-05', volts: 12.6, temperatureC: 20, restedH: 24 },
    { date: '2026-12-10', volts: 12.0, temperatureC: 20, restedH: 24 },
  ];
  const { plan, pct } = planned('2026-12-10', { readings, leadOffOn: '2026-10-30' });
  const m = plan.calibration!.multiplier;
  expect(m).toBeGreaterThan(2);
  expect(pct('2026-10-30')).toBeCloseTo(90 - 5 * (2.4 + 0.1 * m), 6);
});

test.each<[string, Partial<Machine>, string | undefined, string | undefined]>([
  ['nothing', {}, undefined, undefined],
  ['the whole lay-up', { doneSteps: [{ stepId: 'lay-up', date: '2026-11-02' }] }, '2026-11-02', '2026-11-02'],
  ['its charge alone', { doneSteps: [{ stepId: 'battery.charge', date: '2026-11-02' }] }, '2026-11-02', undefined],
  ['its lead alone', { doneSteps: [{ stepId: 'battery.off', date: '2026-11-02' }] }, undefined, '2026-11-02'],
  ['carried in', { doneSteps: [{ stepId: 'battery.out', date: '2026-11-02' }] }, undefined, '2026-11-02'],
  ['an earlier season', { doneSteps: [{ stepId: 'lay-up', date: '2025-11-02' }] }, undefined, undefined],
  [
    'the lay-up but for the charge',
    {
      doneSteps: [{ stepId: 'lay-up', date: '2026-11-02' }],
      skippedSteps: [{ stepId: 'battery.charge', date: '2026-11-02' }],
    },
    undefined,
    '2026-11-02',
  ],
])('what is ticked: %s', (_, record, charged, off) => {
  const moth = machine('Moth', 'shed', { battery: battery('agm', 10), asLeft: [], ...record });
  const found = withTickedBattery(moth, procedures, place('shed'));
  expect([found.chargedAtLayUp, found.leadOffOn]).toEqual([charged, off]);
});

test('where nothing can charge it later, it was charged before the rest', () => {
  const doneSteps = [{ stepId: 'lay-up', date: '2026-11-02' }];
  const moth = machine('Moth', 'shed', { battery: battery('agm', 10, { removable: false }), asLeft: [], doneSteps });
  expect(withTickedBattery(moth, procedures, place('shed')).chargedAtLayUp).toBe('2026-10-25');
  expect(withTickedBattery(moth, procedures, place('garage', { power: true })).chargedAtLayUp).toBe('2026-11-02');
});

test('that no charger serves it is said until the start-up is charged for, and of the lay-up until that is done', () => {
  const said = (asOf: string, doneSteps: Machine['doneSteps']) => {
    const { household: read } = readWith({}, 'workshop');
    const machines = read!.machines.map((m) => ({ ...m, readings: [], charged: [], doneSteps }));
    const { plan } = planSeason({ ...read!, machines, chargers: [], procedures }, { asOf, quick: true });
    return plan.machines[0]!.warnings.filter(({ about }) => about === 'charger').map(({ text }) => text);
  };
  const laidUp = { stepId: 'lay-up', date: '2026-10-26' };
  expect(said('2026-10-20', [])).toMatchObject(
    [/at lay-up|has to be charged/].map((part) => expect.stringMatching(part)),
  );
  for (const text of said('2026-10-28', [laidUp])) expect(text).not.toMatch(/at lay-up/);
  expect(said('2027-04-11', [laidUp, { stepId: 'start-up', date: '2027-04-10' }])).toEqual([]);
});
