import { expect, test } from 'vitest';
import type { BatteryPlan, BeforeCharge, Charge, ChargeTrip, PlanStep } from '../../src/planner/season-plan.ts';
import {
  isStartUpCharge,
  startUpChargeFrom,
  withoutStartUpChargeSteps,
  withoutStartUpCharges,
  withoutStartUpTrips,
} from '../../src/planner/start-up-charge.ts';
import { NO_NEEDS, plainStep } from './plain-step.ts';

// Of two charges within a week one is enough: common practice, from memory.
const NEEDS = { ...NO_NEEDS, charger: true };
const step = (id: string, date: string | undefined, more: Partial<PlanStep> = {}) =>
  plainStep(id, { date, phase: 'start-up', ...more });
const full = (date: string | undefined, more: Partial<PlanStep> = {}) =>
  step('start-up-battery.full', date, { needs: NEEDS, reading: 'V', ...more });

test('the step that reads the volts with the charger at hand is the charge of the start-up', () => {
  expect(isStartUpCharge(full('2027-07-20'))).toBe(true);
  expect(isStartUpCharge(full('2027-07-20', { phase: 'look-in' }))).toBe(false);
  expect(isStartUpCharge(full('2027-07-20', { reading: undefined }))).toBe(false);
  expect(isStartUpCharge(full('2027-07-20', { needs: { ...NEEDS, charger: false } }))).toBe(false);
});

test('a charge is its own from the first day of the start-up on, at most a week before it', () => {
  const steps = [step('a', '2027-07-10'), step('b', '2027-07-13'), full('2027-07-20'), step('c', '2027-07-24')];
  expect(startUpChargeFrom(steps)).toBe('2027-07-13');
  expect(startUpChargeFrom([full('2027-07-20')])).toBe('2027-07-20');
  expect(startUpChargeFrom([step('b', '2027-07-13', { done: true }), full('2027-07-20')])).toBe('2027-07-20');
  expect(startUpChargeFrom([step('b', '2027-07-13', { phase: 'look-in' }), full('2027-07-20')])).toBe('2027-07-20');
  expect(startUpChargeFrom([step('a', '2027-07-13'), full('2027-07-20', { done: true })])).toBeUndefined();
  expect(startUpChargeFrom([step('a', '2027-07-13'), full(undefined)])).toBeUndefined();
});

test('charges from that day on leave the plan, and what they were due by stays', () => {
  const charge = (date: string, earliest: string, overdue?: boolean) => ({ date, earliest, overdue }) as Charge;
  const battery = (...charges: Charge[]) => ({ charges }) as BatteryPlan;
  const [early, late] = [charge('2027-05-01', '2027-05-02'), charge('2027-07-20', '2027-07-12', true)];
  expect(withoutStartUpCharges(battery(early, late), '2027-07-20')).toEqual({
    charges: [early],
    chargeAtStartUp: { due: '2027-07-12', overdue: true },
  });
  expect(withoutStartUpCharges(battery(early), '2027-07-20')).toEqual({ charges: [early] });
});

test('a trip keeps the other machines, and one that is left with none is none', () => {
  const trip = (date: string, ...machines: string[]) =>
    ({ id: date, date, machines, charges: machines.map((machine) => ({ machine, chargeIndex: 0 })) }) as ChargeTrip;
  const from = new Map([['a', '2027-07-20']]);
  expect(
    withoutStartUpTrips([trip('2027-07-19', 'a'), trip('2027-07-20', 'a', 'b'), trip('2027-07-21', 'a')], from),
  ).toEqual([trip('2027-07-19', 'a'), trip('2027-07-20', 'b')]);
});

test('what was to be settled before a charge that leaves the plan is said of the start-up’s', () => {
  const charge = (date: string, before?: BeforeCharge) => ({ date, earliest: date, before }) as Charge;
  const battery = (before: BeforeCharge | undefined, ...charges: Charge[]) => ({ charges, before }) as BatteryPlan;
  const steps = [
    step('look-in.charge.1', '2027-05-01', { phase: 'look-in' }),
    step('look-in.charge.2', '2027-07-14', { phase: 'look-in' }),
    full('2027-07-20', { title: 'Charge full', detail: 'To the end.' }),
  ];
  const isCharge = ({ id }: PlanStep) => id.startsWith('look-in.charge');
  const [frozen, low]: BeforeCharge[] = [
    { kind: 'frozen', text: 'It may be frozen.' },
    { kind: 'low', text: 'Do not just charge it.' },
  ];
  const left = (plan: BatteryPlan | undefined) => withoutStartUpChargeSteps(steps, '2027-07-13', plan, isCharge);
  const own = battery(undefined, charge('2027-05-01', low), charge('2027-07-14', frozen));
  // A frozen battery can burst on the charger: its step must say so whoever makes it.
  expect(left(own)).toEqual([
    steps[0],
    { ...steps[2], title: 'Charge full (it may be frozen: look first)', detail: 'It may be frozen. To the end.' },
  ]);
  expect(withoutStartUpCharges(own, '2027-07-13').before).toEqual(frozen);
  // Without it, or where the step speaks of its last reading already, nothing is added.
  expect(left(battery(undefined, charge('2027-05-01', low), charge('2027-07-14')))).toEqual([steps[0], steps[2]]);
  const read = battery(low, charge('2027-07-14', frozen));
  expect(left(read)).toEqual([steps[0], steps[2]]);
  expect(withoutStartUpCharges(read, '2027-07-13').before).toEqual(low);
  expect(left(undefined)).toEqual([steps[0], steps[2]]);
  const done = [{ ...steps[2]!, done: true }];
  expect(withoutStartUpChargeSteps(done, '2027-07-13', own, isCharge)).toEqual(done);
});
