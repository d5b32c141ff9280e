/** A battery as the rota sees it: from when, until when, where, and when it may be charged, each at its border. */
import { expect, test } from 'vitest';
import {
  chooseCare,
  lossCurve,
  lossPct,
  openCircuitVoltage,
  surelyBelowV,
} from '../../../src/planner/battery/index.ts';
import { careCase } from '../../../src/planner/battery/plan.ts';
import { batteryUnit, rotaBattery } from '../../../src/planner/battery/unit.ts';
import { addDays, dayNumber } from '../../../src/planner/dates.ts';
import type { Battery, Household, Machine, Place } from '../../../src/planner/household.ts';
import { battery, COLD_STORE, contexts, exactly, household, machine, place, sineStore } from './world.ts';

/** A hundred days at 20 °C all year, 0.5 % lost a day: 25 % are gone on the fiftieth. */
const REST = { lastUse: '2026-04-01', firstUse: '2026-07-10', proposed: false, reasons: [] };
const WARM = sineStore(20, 0, 0);
const OWN: Battery = battery('flooded-antimony', 12, {
  selfDischargePctPerMonth: exactly(15),
  startPct: exactly(99.9),
});
const FIRST = dayNumber(REST.lastUse);

interface Given {
  own?: Partial<Battery>;
  kind?: Battery['chemistry'];
  more?: Partial<Machine>;
  at?: Partial<Place>;
  home?: Partial<Household>;
  asOf?: string;
  store?: typeof WARM;
}
function unitOf({
  own = {},
  kind = 'flooded-antimony',
  more = {},
  at = {},
  home = {},
  asOf = '2026-03-01',
  store = WARM,
}: Given) {
  const moth = machine('Moth', 'Barn', {
    season: REST,
    battery: { ...OWN, chemistry: kind, care: 'visits', ...own },
    ...more,
  });
  const all = household([moth], { places: [place('Barn', at)], batteryRoom: undefined, ...home });
  const c = careCase(moth, all, contexts(all, store))!;
  const unit = batteryUnit({ ...c, care: chooseCare(c) }, { locale: 'en-GB', units: 'metric' }, asOf);
  return { unit, rota: rotaBattery(unit, all) };
}
const rotaOf = (given: Given) => unitOf(given).rota;
const on = (index: number) => FIRST + index;

test('trips serve it from the day after the last use, after the last charge of the log, and not on days gone by', () => {
  expect(rotaOf({}).firstDay).toBe(on(1));
  expect(rotaOf({ asOf: addDays(REST.lastUse, 30) }).firstDay).toBe(on(30));
  const charged = [{ date: addDays(REST.lastUse, 20), toPct: 100 }];
  expect(rotaOf({ more: { charged }, asOf: addDays(REST.lastUse, 20) }).firstDay).toBe(on(21));
  // Nobody charges on a day gone by, once the first use was to be no less.
  expect(rotaOf({ asOf: REST.firstUse }).firstDay).toBe(on(100));
  expect(rotaOf({ asOf: addDays(REST.firstUse, 1) }).firstDay).toBe(on(101));
});

test('the last ten days are left to the charge at start-up, in which it loses 5 %; of one that was found low the last week', () => {
  // 15 % a month at 20 °C is half a percent a day.
  expect(rotaOf({}).endDay).toBe(on(90));
  const volts = (pct: number) => openCircuitVoltage('flooded-antimony', pct, 20);
  const readOn = (index: number, pct: number) => {
    const date = addDays(REST.lastUse, index);
    const readings = [{ date, volts: volts(pct), temperatureC: 20, restedH: 12 }];
    return rotaOf({ asOf: date, own: { care: 'maintainer' }, at: { power: true }, more: { readings } });
  };
  // Found at 60 % on its maintainer nine days before the first use: it is charged now, not at start-up.
  expect(readOn(91, 60)).toMatchObject({ firstDue: on(91), endDay: on(93) });
  // Found low in time, it is charged, and the charge lasts.
  expect(readOn(40, 60)).toMatchObject({ firstDue: on(40), endDay: on(90) });
});

test('it is due when it comes down to the threshold, after a charge of the log from there', () => {
  expect(rotaOf({}).firstDue).toBe(on(50));
  const charged = [{ date: addDays(REST.lastUse, 20), toPct: 99.9 }];
  expect(rotaOf({ more: { charged }, asOf: '2026-05-01' }).firstDue).toBe(on(70));
  expect(rotaOf({ own: { selfDischargePctPerMonth: exactly(1) } }).firstDue).toBe(Number.POSITIVE_INFINITY);
  // One that comes off its last day of use below the threshold is due on the next day.
  expect(rotaOf({ own: { startPct: exactly(60) } }).firstDue).toBe(on(1));
});

test('after a charge it is due from that day, and never earlier than it was', () => {
  const rota = rotaOf({ own: { selfDischargePctPerMonth: exactly(15.1) } });
  // 0.5033 % a day: 25 % are gone on day 50 after it.
  expect(rota.dueAfter(on(10), undefined)).toBe(on(60));
  expect(rota.dueAfter(on(40), on(10))).toBe(on(90));
  expect(rota.dueAfter(on(60), on(10))).toBe(Number.POSITIVE_INFINITY);
  // Lithium is charged to 60 %: one that stands at 90 % is due no earlier for it.
  const lithium = rotaOf({ kind: 'lifepo4', own: { startPct: exactly(90) } });
  expect(lithium.firstDue).toBeGreaterThan(on(90));
  expect(lithium.dueAfter(on(5), undefined)).toBe(lithium.firstDue);
});

test('a charge is worth it when a fifth of what may go has gone', () => {
  const rota = rotaOf({ own: { startPct: exactly(100) } });
  // 5 of 25 %: at 95 %, which is after ten days at 0.5 %.
  expect([9, 11].map((day) => rota.worthIt(on(day), undefined))).toEqual([false, true]);
  expect([9, 11].map((day) => rota.worthIt(on(20 + day), on(20)))).toEqual([false, true]);
});

test('hours on a charger are those of the state on that day, without a charger at a tenth of the capacity', () => {
  const rota = rotaOf({});
  const one = { id: 'c', name: 'c', currentA: 1, chemistries: [], maintainer: false };
  // Day 40: 79.9 %, 20.1 % of 12 Ah at 0.85 is 2.838 Ah; 3 h of absorption.
  expect(rota.hoursOn(one, on(40), undefined)).toBeCloseTo((12 * 0.201) / 0.85 + 3, 6);
  expect(rota.hoursOn(undefined, on(40), undefined)).toBeCloseTo((12 * 0.201) / 0.85 / 1.2 + 3, 6);
  // Twenty days after a charge: 10 %.
  expect(rota.hoursOn(one, on(40), on(20))).toBeCloseTo((12 * 0.1) / 0.85 + 3, 6);
  // Empty is empty.
  expect(rotaOf({ own: { selfDischargePctPerMonth: exactly(100) } }).hoursOn(one, on(90), on(1))).toBeCloseTo(
    12 / 0.85 + 3,
    6,
  );
});

test('the yard is home as far as thirty minutes, and for a battery kept in the house', () => {
  expect(rotaOf({ at: { tripMinutes: 30 } }).yard).toBe('home');
  expect(rotaOf({ at: { tripMinutes: 31 } }).yard).toBe('Barn');
  expect(rotaOf({ at: { tripMinutes: 31 }, own: { care: 'carry-in' } }).yard).toBe('home');
});

test('it waits its turn where it was fetched, or where somebody can easily come again', () => {
  expect(rotaOf({ at: { tripMinutes: 31 } }).waits).toBe(true);
  expect(rotaOf({ at: { tripMinutes: 31 }, own: { removable: false } }).waits).toBe(false);
  expect(rotaOf({ at: { tripMinutes: 30 }, own: { removable: false } }).waits).toBe(true);
});

test('lithium is charged below 0 °C only where it can be brought into the warm; lead in any cold', () => {
  const winter = { more: { season: { ...REST, lastUse: '2026-12-01', firstUse: '2027-03-01' } }, store: COLD_STORE };
  const cold = dayNumber('2027-01-20');
  const may = (given: Given, kind: Battery['chemistry'] = 'lifepo4') =>
    rotaOf({ ...winter, kind, ...given }).canCharge(cold);
  const barn = place('Barn');
  expect(may({})).toBe(false);
  expect(may({}, 'flooded-antimony')).toBe(true);
  expect(may({ home: { batteryRoom: { name: 'hall', temperatureC: 18 } } })).toBe(true);
  expect(may({ home: { places: [barn, place('House', { power: true })] } })).toBe(true);
  expect(may({ home: { places: [barn, place('House')] } })).toBe(false);
  // Its own place's power is in the same cold.
  expect(may({ home: { places: [place('Barn', { power: true })] } })).toBe(false);
  expect(may({ own: { removable: false }, home: { batteryRoom: { name: 'hall', temperatureC: 18 } } })).toBe(false);
  expect(may({ own: { removable: false, care: 'carry-in' } })).toBe(true);
  // 0 °C itself is warm enough.
  const store = { ...COLD_STORE, dayMinC: new Float64Array(365).fill(0) };
  expect(may({ store })).toBe(true);
  expect(may({ store: { ...store, dayMinC: new Float64Array(365).fill(-0.1) } })).toBe(false);
});

test('a reading lowers the path to what it surely leaves at most, one on the last day of use does not', () => {
  const read = (day: number, pct: number, restedH = 12, kind: Battery['chemistry'] = 'flooded-antimony') =>
    unitOf({
      kind,
      asOf: addDays(REST.lastUse, day),
      more: {
        readings: [
          { date: addDays(REST.lastUse, day), volts: openCircuitVoltage(kind, pct, 20), temperatureC: 20, restedH },
        ],
      },
    }).unit.loggedHigh;
  expect(read(20, 80)).toEqual([{ index: 20, pct: expect.closeTo(80, 9), kind: 'at-most' }]);
  expect(read(20, 80, 4)).toHaveLength(1);
  expect(read(20, 80, 2)).toEqual([]);
  expect(read(0, 80)).toEqual([]);
  expect(read(1, 80)).toHaveLength(1);
  // Lithium's voltage leaves twenty percent open: what it has at most is what counts, so that a sure low one does.
  expect(read(20, 50, 12, 'lifepo4')).toEqual([{ index: 20, pct: expect.closeTo(70, 9), kind: 'at-most' }]);
  expect(read(20, 90, 12, 'lifepo4')).toEqual([{ index: 20, pct: 100, kind: 'at-most' }]);
});

test('what is read on the day of a charge was read before it', () => {
  const date = addDays(REST.lastUse, 20);
  const volts = openCircuitVoltage('flooded-antimony', 70, 20);
  const { unit } = unitOf({
    asOf: date,
    more: { charged: [{ date, toPct: 100 }], readings: [{ date, volts, temperatureC: 20, restedH: 12 }] },
  });
  expect(unit.loggedHigh.map((r) => r.kind)).toEqual(['at-most', 'charge']);
});

test('on a maintainer that has power a full voltage is the charger’s and tells nothing; without power it does', () => {
  const date = addDays(REST.lastUse, 50);
  const readings = (pct: number) => [
    { date, volts: openCircuitVoltage('flooded-antimony', pct, 20), temperatureC: 20, restedH: 12 },
  ];
  const given = (pct: number) => ({
    own: { care: 'maintainer' as const },
    more: { readings: readings(pct) },
    asOf: date,
  });
  const kept = unitOf({ ...given(98), at: { power: true } }).unit;
  expect([kept.maintained, kept.calibration.result]).toEqual([true, undefined]);
  expect(kept.calibration.readings).toHaveLength(1);
  expect(kept.rates.expected.selfPctPerH).toBeCloseTo(15 / 720, 12);
  const unpowered = unitOf(given(50)).unit;
  expect(unpowered.maintained).toBe(false);
  expect(unpowered.calibration.result!.multiplier).toBeGreaterThan(1);
  expect(unpowered.rates.expected.selfPctPerH).toBeCloseTo((unpowered.calibration.result!.multiplier * 15) / 720, 12);
});

test('in the house it loses at the temperature of its room', () => {
  const { unit } = unitOf({ own: { care: 'carry-in' }, home: { batteryRoom: { name: 'hall', temperatureC: 29.1 } } });
  const own = lossCurve(unit.rest, { roomC: 29.1 }, 9.1);
  expect(lossPct(unit.curve, unit.rates.high, 0, 100)).toBeCloseTo(lossPct(own, unit.rates.high, 0, 100), 12);
});

// 75 % of a wet battery is 12.45 V at 26.7 °C, and 0.016 V less at 15.6 °C (state-of-charge table by temperature); TM 5-3805 has
// 12.4 V. Lithium at a fifth of its charge is at about 12.9 to 13 V, from memory.
test('the volts of the threshold are those of its own chemistry', () => {
  expect(surelyBelowV('flooded-calcium')).toBeCloseTo(12.45 - (0.016 * (26.7 - 20)) / (26.7 - 15.6), 9);
  expect(surelyBelowV('agm')).toBeGreaterThan(surelyBelowV('flooded-calcium'));
  expect(surelyBelowV('lifepo4')).toBeGreaterThan(12.85);
  expect(surelyBelowV('lifepo4')).toBeLessThan(13.05);
});
