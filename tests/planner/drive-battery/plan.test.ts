/** The drive battery of an electric machine: by when to look, and what the store's cold may do to it. */
import { expect, test } from 'vitest';
import { DRIVE_CHEMISTRIES, planDriveBattery } from '../../../src/planner/drive-battery/index.ts';
import type { DriveBattery } from '../../../src/planner/household.ts';
import { caseOf } from '../tasks/generate.ts';

function planned(battery: Partial<DriveBattery> = {}, designLowC = 5, firstUse = '2027-04-10', power = true) {
  const { machine, place, household } = caseOf({ cycle: 'electric', lastUse: '2026-10-25', flags: { power } });
  const driveBattery = { ...machine.driveBattery!, ...battery };
  const season = { ...machine.season, firstUse };
  return planDriveBattery({ machine: { ...machine, driveBattery, season }, place, household, designLowC })!;
}

test('a machine that burns fuel has no plan of a drive battery', () => {
  const { machine, place, household } = caseOf();
  expect(planDriveBattery({ machine, place, household, designLowC: -20 })).toBeUndefined();
});

// Worked by hand from the stated monthly losses, common practice. Lithium-ion, left at 40 % at the least, loses 6 % in 30 days at the
// fastest: 7 % to a third are 35 days, 29 November. From 50 % at 3 %: 17 % are 170 days, 13 April. Lead–acid, full, to 75 %: 15 % at
// the fastest are 50 days, 14 December; 5 % as expected are 150 days, 24 March.
test.each([
  ['lithium-ion', '2027-05-01', '2026-11-29', '2027-04-13'],
  ['lithium-ion', '2027-04-13', '2026-11-29', undefined],
  ['lithium-ion', '2027-04-14', '2026-11-29', '2027-04-13'],
  ['lithium-ion', '2026-11-29', undefined, undefined],
  ['lead-acid', '2027-05-01', '2026-12-14', '2027-03-24'],
] as const)('%s, first use %s: down to its limit by %s, more likely by %s', (chemistry, firstUse, by, likely) => {
  const { plan } = planned({ chemistry }, 5, firstUse);
  expect([plan.rechargeBy, plan.rechargeExpected]).toEqual([by, likely]);
  expect(plan.derivations[0]!.result.value).toBe(by ?? 'not before first use');
});

test('the figures that stand beside the result give it again by the equation that is told', () => {
  for (const chemistry of ['lithium-ion', 'lead-acid'] as const) {
    const { derivations } = planned({ chemistry }, 5, '2027-05-01').plan;
    const [derivation] = derivations;
    expect(derivation!.equation).toContain('day = last use + 30 d·(S0 − S1)/loss');
    const of = (name: RegExp) => derivation!.inputs.find((input) => name.test(input.name))!.value;
    const [s0, s1, loss] = [/S0/, /S1/, /^fastest loss/].map((name) => Number(of(name)));
    const day = new Date(`${of(/^last use/)}T00:00:00Z`);
    day.setUTCDate(day.getUTCDate() + Math.floor((30 * (s0! - s1!)) / loss!));
    expect(derivation!.result.value).toBe(day.toISOString().slice(0, 10));
    expect(derivation!.inputs.slice(1).every(({ unit }) => unit === '%')).toBe(true);
  }
});

// Common practice: lithium-ion rests about half full and is not charged below 0 °C, lead–acid rests full.
test('how full each rests', () => {
  const { 'lithium-ion': lithium, 'lead-acid': lead } = DRIVE_CHEMISTRIES;
  expect([lithium.keepPct, lithium.minChargeC]).toEqual([{ low: 40, high: 60 }, 0]);
  expect([lead.keepPct, lead.minChargeC]).toEqual([{ low: 100, high: 100 }, undefined]);
  for (const { keepPct, chargeToPct, rechargeBelowPct, lossPctPerMonth: loss } of [lithium, lead]) {
    expect(keepPct.low).toBeLessThanOrEqual(chargeToPct);
    expect(chargeToPct).toBeLessThanOrEqual(keepPct.high);
    expect(rechargeBelowPct).toBeLessThan(keepPct.low);
    expect(loss.low).toBeLessThan(loss.value);
    expect(loss.value).toBeLessThan(loss.high);
  }
});

// Data sheets of lithium-ion cells, from memory: kept down to −20 °C. Sulphuric acid of SG 1.225 freezes at about −41 °C, of half that
// charge at about −20 °C (its freezing curve): a lead–acid battery that is charged again at 75 % stands that cold.
test('what cold each stands, and in what range that lies', () => {
  const { 'lithium-ion': lithium, 'lead-acid': lead } = DRIVE_CHEMISTRIES;
  expect(lithium.lowestStorageC.value).toBe(-20);
  expect(Math.abs(lead.lowestStorageC.value - -41)).toBeLessThanOrEqual(1);
  for (const { lowestStorageC: cold, sources, name, id } of [lithium, lead]) {
    expect(cold.low).toBeLessThan(cold.value);
    expect(cold.value).toBeLessThan(cold.high);
    expect(cold.high).toBeLessThan(0);
    expect(sources.length).toBeGreaterThan(0);
    for (const source of sources) expect(source).toMatch(/\w/);
    expect(name.replace('–', '-')).toBe(id);
  }
});

test.each([
  ['milder than freezing', {}, 0, []],
  ['below freezing', {}, -0.5, ['note']],
  ['at the lowest that its maker allows', {}, -20, ['note']],
  ['below that', {}, -20.5, ['warning', 'note']],
  ['below that of lead–acid, which may be charged in the cold', { chemistry: 'lead-acid' }, -21, ['warning']],
  ['below that, and carried out of the cold', { removable: true }, -21, []],
] as const)('a battery that does not come out in a store %s', (_, battery, low, levels) => {
  const { warnings } = planned({ removable: false, ...battery }, low);
  expect(warnings.map(({ level }) => level)).toEqual(levels);
  for (const { about, machine, text, act } of warnings) {
    expect([about, machine]).toEqual(['drive-battery', 'machine']);
    expect(text).toContain('does not come out');
    expect(act).toMatch(/\.$/);
  }
});

test('the warnings name the cold and the limits', () => {
  const [cold, charging] = planned({ removable: false }, -31).warnings;
  expect(cold!.text).toMatch(/can fall to −31 °C in the coldest to be reckoned with: .*kept down to −20 °C/);
  expect(charging!.text).toContain('gets below 0 °C');
});

// Where nothing can charge it, its warning is the one thing to say of charging; where it lasts the rest, a note.
test.each([
  ['2027-04-10', 'warning', / It may want a charge by 29 November 2026\.$/],
  ['2026-11-20', 'note', /no electricity at Tin shed\.$/],
] as const)('a battery that nothing can charge where it rests, first use %s', (firstUse, level, text) => {
  const { warnings } = planned({ removable: false }, -5, firstUse, false);
  expect(warnings.map((warning) => warning.level)).toEqual([level]);
  expect(warnings[0]!.text).toMatch(
    /^Nothing can charge Juniper's drive battery where it rests: it does not come out, /,
  );
  expect(warnings[0]!.text).toMatch(text);
  expect(warnings[0]!.act).toMatch(/bring electricity to it, or take it to some/);
  expect(planned({ removable: true }, -5, firstUse, false).warnings).toEqual([]);
});
