/** A battery that does not come out, at a place without electricity: nothing can charge it there, and that is said, not planned. */
import { expect, test } from 'vitest';
import { planBatteries } from '../../../src/planner/battery/index.ts';
import type { Battery, Household, Place } from '../../../src/planner/household.ts';
import { battery, COLD_LOW, COLD_STORE, contexts, household, machine, place } from './world.ts';

const SUMMER = { lastUse: '2026-04-05', firstUse: '2026-11-20', proposed: false, reasons: [] };

function planned(
  own: Partial<Battery> = {},
  at: Partial<Place> = {},
  more: Partial<Household> = {},
  asOf = '2026-04-01',
) {
  const moth = machine('Moth', 'Barn', {
    battery: battery('flooded-antimony', 12, { removable: false, ...own }),
    season: SUMMER,
  });
  const home = household([moth], { places: [place('Barn', at), place('House', { power: true })], ...more });
  const { plans, trips, warnings } = planBatteries(home, asOf, contexts(home, COLD_STORE, COLD_LOW));
  return {
    plan: plans.get('Moth')!,
    trips,
    warnings,
    charger: warnings.filter(({ text }) => text.startsWith('Nothing can charge')),
  };
}

test('no charge and no trip is planned that nobody can make; by when it runs down is told, and what can be done', () => {
  const { plan, trips, charger } = planned();
  expect([plan.charges, trips, plan.outOfReach]).toEqual([[], [], true]);
  // It runs down on the day on which a battery of the same loss that comes out is charged.
  expect(plan.chargeWithoutDay).toBe(planned({ removable: true }).plan.charges[0]!.earliest);
  expect(charger).toHaveLength(1);
  expect(charger[0]).toMatchObject({ level: 'warning', machine: 'Moth', about: 'battery' });
  expect(charger[0]!.text).toMatch(
    /^Nothing can charge Moth's battery where it rests: it does not come out of the machine, and there is no electricity at Barn\. At its fastest loss it is down to 75 % on \d+ \w+ 2026: /,
  );
  expect(charger[0]!.act).toMatch(/rest where there is electricity, .* workshop take the battery out/);
  expect(plan.careReason).toMatch(/^Nothing can charge it where it rests: /);
});

test('one more charger in the house changes nothing, none either', () => {
  for (const chargers of [[], household([]).chargers])
    expect(planned({}, {}, { chargers }).charger.map(({ text }) => text)).toEqual(
      planned().charger.map(({ text }) => text),
    );
});

test('it is within reach where it comes out, and where there is electricity', () => {
  for (const { plan } of [planned({ removable: true }), planned({}, { power: true })]) {
    expect(plan.charges.length).toBeGreaterThan(0);
    expect(plan.outOfReach).toBeUndefined();
  }
});

test('one that lasts the rest is noted, since it is charged before it and after it', () => {
  const slow = { value: 0.5, low: 0.3, high: 0.8 };
  const { plan, charger } = planned({ selfDischargePctPerMonth: slow });
  expect([plan.charges, plan.chargeWithoutDay]).toEqual([[], undefined]);
  expect(charger.map(({ level }) => level)).toEqual(['note']);
  expect(charger[0]!.text).toMatch(
    /lasts the rest by itself, but has to be charged before the rest and before the first start\.$/,
  );
});

test('no advice asks for what cannot be done: a maintainer, a charge before the cold, carrying it in', () => {
  for (const own of [
    {},
    { care: 'visits' as const },
    { care: 'maintainer' as const },
    { chemistry: 'lifepo4' as const },
  ])
    for (const { act } of planned(own).warnings.filter(({ act }) => act !== undefined))
      expect(act).not.toMatch(/carry (?:it|the battery)|charge it before|[Gg]et or borrow|on a warm day|as on visits/);
});

test('once the first use is past it is the start-up that charges', () => {
  const { plan } = planned({}, {}, {}, '2026-11-25');
  expect(plan.chargeAtStartUp).toMatchObject({ overdue: true });
});
