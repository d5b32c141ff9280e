import { expect, test } from 'vitest';
import type { BatteryPlan, Charge, ChargeTrip, PlanStep } from '../../src/planner/season-plan.ts';
import {
  isStartUpCharge,
  startUpChargeFrom,
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
