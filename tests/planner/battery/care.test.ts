/** How a battery is kept, case by case: which care, what is said of it, and what a household that chose otherwise is warned of. */
import { expect, test } from 'vitest';
import { type Care, chooseCare, marginWarning, outlookAtMachine } from '../../../src/planner/battery/care.ts';
import { careCase } from '../../../src/planner/battery/plan.ts';
import type { Battery, Charger, Household, Machine, Place } from '../../../src/planner/household.ts';
import {
  battery,
  COLD_LOW,
  COLD_STORE,
  contexts,
  exactly,
  household,
  LEAD,
  machine,
  place,
  ranged,
  sineStore,
} from './world.ts';

const KEEPER: Charger = { id: 'keeper', name: 'Keeper', currentA: 0.8, chemistries: LEAD, maintainer: true };
const LITHIUM: Charger = { ...KEEPER, id: 'li', name: 'Li', currentA: 0.4, chemistries: ['lifepo4'] };
const SUMMER = { lastUse: '2026-03-29', firstUse: '2026-12-20', proposed: false, reasons: [] };
const WINTER = { ...SUMMER, lastUse: '2026-10-25', firstUse: '2027-04-10' };
const MILD = { store: sineStore(15, 8, 3), low: { ...COLD_LOW, designC: COLD_LOW.designC.map(() => 5) } };
const COLD = { store: COLD_STORE, low: COLD_LOW };
const ARCTIC = { store: COLD_STORE, low: { ...COLD_LOW, designC: COLD_LOW.designC.map((c) => c - 14) } };

interface Given {
  own?: Partial<Battery>;
  kind?: Battery['chemistry'];
  season?: Machine['season'];
  at?: Partial<Place>;
  home?: Partial<Household>;
  weather?: typeof COLD;
  maintainerFree?: boolean;
}

function caseOf({ own = {}, kind = 'flooded-antimony', season = SUMMER, at = {}, home = {}, weather = MILD }: Given) {
  const machines = [machine('Moth', 'Barn', { battery: battery(kind, 12, own), season })];
  const all = household(machines, { chargers: [], places: [place('Barn', at)], ...home });
  return careCase(machines[0]!, all, contexts(all, weather.store, weather.low))!;
}

function careOf(given: Given): Care {
  return chooseCare({ ...caseOf(given), maintainerFree: given.maintainerFree ?? true });
}

const LASTING = { selfDischargePctPerMonth: ranged(1, 0.5, 1.5) };
const FLAT = { startPct: exactly(80) };

test.each<[string, Given, Partial<Care>, RegExp]>([
  [
    'power and a maintainer that suits',
    { at: { power: true }, home: { chargers: [KEEPER] } },
    { care: 'maintainer', connected: true, keptAt: 'machine' },
    /^There is power at Barn and "Keeper" suits it, so its lead can stay on; without it \d+ visits would be needed\.$/,
  ],
  [
    'the same, and the acid could freeze',
    { at: { power: true }, home: { chargers: [KEEPER] }, own: FLAT, weather: ARCTIC, season: WINTER },
    { care: 'maintainer' },
    /would be needed, and the acid could freeze\.$/,
  ],
  [
    'the same, where only the lead would have to come off',
    {
      at: { power: true },
      home: { chargers: [KEEPER] },
      own: { ...LASTING, drainMA: exactly(14) },
      season: { ...SUMMER, firstUse: '2026-08-30' },
    },
    { care: 'maintainer' },
    /without it the lead would have to come off\.$/,
  ],
  [
    'it lasts by itself',
    { own: LASTING },
    { care: 'visits', connected: true },
    /^It lasts the rest by itself, even at its fastest loss, and stays clear of freezing: no charge is needed before start-up\.$/,
  ],
  [
    'it lasts by itself beside a maintainer that it does not need',
    { own: LASTING, at: { power: true }, home: { chargers: [KEEPER] } },
    { care: 'visits' },
    /^It lasts the rest by itself/,
  ],
  [
    'it could freeze, and can come in',
    { own: FLAT, weather: ARCTIC, season: WINTER },
    { care: 'carry-in', keptAt: 'room', connected: false, roomC: 18 },
    /^In the machine it would come (?:within \d+ degrees of|\d+ degrees beyond) freezing \(the limit is 3 degrees\), so it spends the rest in the warm room\.$/,
  ],
  [
    'it could freeze, and cannot come out',
    { own: { ...FLAT, removable: false }, weather: ARCTIC, season: WINTER },
    { care: 'visits', keptAt: 'machine' },
    / It would come (?:within \d+ degrees of|\d+ degrees beyond) freezing, and it does not come out, so it stays in the machine\.$/,
  ],
  [
    'it could freeze, and there is no room',
    { own: FLAT, weather: ARCTIC, season: WINTER, home: { batteryRoom: undefined } },
    { care: 'visits' },
    / It would come (?:within \d+ degrees of|\d+ degrees beyond) freezing, and no warm room is named, so it stays in the machine\.$/,
  ],
  [
    'lithium that must be charged in the cold',
    { kind: 'lifepo4', own: { ...FLAT, selfDischargePctPerMonth: ranged(8, 6, 12) }, weather: COLD },
    { care: 'carry-in' },
    /^It must not be charged below 0 °C, and Barn can fall to −31 °C in the coldest to be reckoned with: in the warm room it can be charged on any day, so it spends the rest there\.$/,
  ],
  [
    'lithium that lasts in the cold, since it is charged before the first start in any case',
    { kind: 'lifepo4', own: LASTING, weather: COLD },
    { care: 'carry-in', keptAt: 'room' },
    /^It must not be charged below 0 °C, and Barn can fall to −31 °C in the coldest to be reckoned with: in the warm room it can be charged on any day, so it spends the rest there\.$/,
  ],
  [
    'lithium that lasts in the cold, and no room',
    { kind: 'lifepo4', own: LASTING, weather: COLD, home: { batteryRoom: undefined } },
    { care: 'visits' },
    /^It lasts the rest by itself, even at its fastest loss: no charge is needed before start-up\. It must not be charged below 0 °C, and Barn can fall to −31 °C in the coldest to be reckoned with; no warm room is named, so it stays in the machine: charge it on a warm day, or bring it into the warm for the charge\.$/,
  ],
  [
    'lithium that lasts where it never freezes',
    { kind: 'lifepo4', own: LASTING },
    { care: 'visits' },
    /^It lasts the rest by itself, .* no charge is needed before start-up\.$/,
  ],
  [
    'a store far away',
    { at: { tripMinutes: 31 } },
    { care: 'carry-in' },
    /^Barn is 31 minutes away and \d+ visits would be needed, so it spends the rest in the warm room\.$/,
  ],
  [
    'a store just near enough',
    { at: { tripMinutes: 30 } },
    { care: 'visits' },
    /^It is charged on computed days \(\d+ charges if it were alone\): there is no power at Barn\. It stays clear of freezing\.$/,
  ],
  [
    'a store far away, for a battery that lasts',
    { at: { tripMinutes: 90 }, own: LASTING },
    { care: 'visits' },
    /^It lasts the rest/,
  ],
  [
    'power, but no maintainer',
    { at: { power: true } },
    { care: 'visits' },
    /: none of your chargers is a maintainer that suits it\. /,
  ],
  [
    'power, and a maintainer that is on another battery',
    { at: { power: true }, home: { chargers: [KEEPER] }, maintainerFree: false },
    { care: 'visits' },
    /: the maintainer that suits it is on another battery\. /,
  ],
  [
    'power and a maintainer, in a cold that forbids charging',
    {
      kind: 'lifepo4',
      own: { ...FLAT, selfDischargePctPerMonth: ranged(8, 6, 12), removable: false },
      at: { power: true },
      home: { chargers: [LITHIUM] },
      weather: COLD,
    },
    { care: 'visits' },
    /: Barn gets too cold to leave a charger on\./,
  ],
])('proposed with %s', (_, given, expected, reason) => {
  const care = careOf(given);
  expect(care).toMatchObject(expected);
  expect(care.reason.replace(/ Its lead comes off:.*$/, '')).toMatch(reason);
  expect(care.warnings.filter(({ level }) => level !== 'note')).toEqual([]);
});

/** 14 mA for 720 h is 10.08 Ah, 84 % of 12 Ah. */
test('a lead that comes off says what its drain would take in a month', () => {
  expect(careOf({ own: { drainMA: exactly(14) } }).reason).toMatch(
    / Its lead comes off: a key-off drain of up to 14 mA would take 84 % a month\.$/,
  );
  expect(careOf({ own: { drainMA: exactly(14), health: exactly(0.5) } }).reason).toMatch(
    / would take all of its charge within about 18 days\.$/,
  );
  expect(careOf({ own: { drainMA: exactly(14), connected: true } }).reason).not.toMatch(/lead/);
  expect(careOf({ own: { drainMA: exactly(0) } }).reason).not.toMatch(/lead/);
});

test.each<[string, Given, { level: string; text: RegExp; act: RegExp }[]]>([
  [
    'a maintainer without power',
    { own: { care: 'maintainer' }, home: { chargers: [KEEPER] } },
    [
      {
        level: 'warning',
        text: /^Moth's battery is to stay on a maintainer, but there is no power at Barn\.$/,
        act: /until then it is charged as on visits\.$/,
      },
    ],
  ],
  [
    'a maintainer that the household has not',
    { own: { care: 'maintainer' }, at: { power: true } },
    [
      {
        level: 'warning',
        text: /^None of your chargers may stay on Moth's battery\. You have given no charger\.$/,
        act: /^Get a maintainer with a programme for .+\. It holds a voltage, so a small one does; on its label no more than \d\.\d A\.$/,
      },
    ],
  ],
  [
    'a charger that may not stay on',
    {
      own: { care: 'maintainer' },
      at: { power: true },
      home: { chargers: [{ ...KEEPER, maintainer: false }] },
    },
    [
      {
        level: 'warning',
        text: /battery\. None of those that suit it is a maintainer that can be used at Barn\.$/,
        act: /no more than 1\.5 A\.$/,
      },
    ],
  ],
  [
    'a maintainer that is on another battery',
    { own: { care: 'maintainer' }, at: { power: true }, home: { chargers: [KEEPER] }, maintainerFree: false },
    [
      {
        level: 'warning',
        text: /^The maintainer that suits Moth's battery is on another battery already\.$/,
        act: /^Change it over weekly, or get a second one\.$/,
      },
    ],
  ],
  [
    'a maintainer on lithium in frost',
    {
      kind: 'lifepo4',
      own: { care: 'maintainer' },
      at: { power: true },
      home: { chargers: [LITHIUM] },
      weather: COLD,
    },
    [
      {
        level: 'danger',
        text: /^Barn can fall to −31 °C in the coldest to be reckoned with: lithium iron phosphate must not be charged below 0 °C, and a maintainer charges\.$/,
        act: /^Carry the battery in, or disconnect it/,
      },
    ],
  ],
  [
    'a maintainer on lithium where it never freezes',
    { kind: 'lifepo4', own: { care: 'maintainer' }, at: { power: true }, home: { chargers: [LITHIUM] } },
    [],
  ],
  [
    'carrying in what does not come out',
    { own: { care: 'carry-in', removable: false } },
    [
      {
        level: 'warning',
        text: /^Moth's battery is to be carried in, but is said not to come out\.$/,
        act: /^Check whether it comes out/,
      },
    ],
  ],
  [
    'carrying in to no room',
    { own: { care: 'carry-in' }, home: { batteryRoom: undefined } },
    [
      {
        level: 'note',
        text: /^No warm room is named; 18 °C is taken for Moth's battery\.$/,
        act: /^Say that there is one: .*Warmth makes a battery lose charge faster\.$/,
      },
    ],
  ],
  ['carrying in to a room', { own: { care: 'carry-in' } }, []],
  ['visits', { own: { care: 'visits' } }, []],
])('a household that chose %s is told', (_, given, warnings) => {
  const care = careOf(given);
  expect(care.care).toBe(given.own!.care);
  expect(care.reason).toMatch(/^Chosen by the household\./);
  expect(care.warnings).toEqual(
    warnings.map(({ level, text, act }) => ({
      level,
      text: expect.stringMatching(text),
      act: expect.stringMatching(act),
    })),
  );
});

const margin = (minK: number, given: Given = {}, keptAt: 'machine' | 'room' = 'machine') =>
  marginWarning(caseOf(given), { isKept: false, keptAt }, { minK, month: 1 });

test('a margin under 10 K is warned of, one under 3 K is a danger, and none in a room', () => {
  expect(margin(10)).toEqual([]);
  expect(margin(9.9)).toMatchObject([
    { level: 'warning', text: expect.stringMatching(/ within 10 degrees of freezing\.$/) },
  ]);
  expect(margin(3)).toMatchObject([{ level: 'warning', act: expect.stringMatching(/before a cold spell, not after/) }]);
  expect(marginWarning(caseOf({}), { isKept: true, keptAt: 'machine' }, { minK: 5, month: 1 })).toMatchObject([
    { act: expect.stringMatching(/see before a cold spell that the maintainer works, and read the volts\.$/) },
  ]);
  expect(margin(2.9)).toMatchObject([
    { level: 'danger', text: expect.stringMatching(/ within 3 degrees of freezing\.$/) },
  ]);
  expect(margin(0)).toMatchObject([{ text: expect.stringMatching(/ within 0 degrees of freezing\.$/) }]);
  expect(margin(-4)).toMatchObject([{ text: expect.stringMatching(/ comes 4 degrees beyond freezing\.$/) }]);
  expect(margin(-4, {}, 'room')).toEqual([]);
});

test('what is done about a danger is what can be done with that battery', () => {
  expect(margin(1)[0]!.act).toBe('Carry it to the warm room.');
  expect(margin(1, { own: { removable: false }, at: { power: true } })[0]!.act).toMatch(
    /^It does not come out: keep it fully charged/,
  );
  const away = { own: { removable: false } };
  expect(margin(1, away)[0]!.act).toMatch(/^It does not come out, and nothing can charge it there: move the machine/);
  expect(margin(5, away)[0]!.act).toMatch(/^Have it full as the rest begins/);
  expect(margin(5, { kind: 'lifepo4', ...away })[0]!.act).toMatch(/or move the machine before the coldest weeks\.$/);
  expect(margin(1, { home: { batteryRoom: undefined } })[0]!.act).toMatch(
    /^Carry it to a place that stays above freezing/,
  );
  const lithium = margin(5, { kind: 'lifepo4' })[0]!;
  expect(lithium.text).toMatch(/of its lowest storage temperature\.$/);
  expect(lithium.act).toMatch(/^Look up the lowest storage temperature of this very battery/);
});

test('the lead stays on only where the battery lasts with it and stays 10 K from freezing', () => {
  expect(outlookAtMachine(caseOf({ own: LASTING })).connected).toBe(true);
  expect(outlookAtMachine(caseOf({ own: { ...LASTING, drainMA: exactly(14) } }))).toMatchObject({ connected: false });
  expect(outlookAtMachine(caseOf({ own: { ...LASTING, connected: false } })).connected).toBe(false);
  const drained = outlookAtMachine(caseOf({ own: { ...LASTING, drainMA: exactly(14), connected: true } }));
  expect(drained.connected).toBe(true);
  expect(drained.visits).toBe(drained.visitsLeadOn);
  expect(drained.visits).toBeGreaterThan(0);
});

/** Without acid the limit is −40 °C whatever the charge, so that margins come out whole: −30 °C leaves 10 K, −37 °C leaves 3 K. */
const lithiumAt = (designC: number, more: Given = {}) => ({
  kind: 'lifepo4' as const,
  own: LASTING,
  season: WINTER,
  weather: { store: COLD_STORE, low: { ...COLD_LOW, designC: COLD_LOW.designC.map(() => designC) } },
  ...more,
});

test('ten kelvins are clear of freezing, three are just no danger', () => {
  expect(outlookAtMachine(caseOf(lithiumAt(-30))).connected).toBe(true);
  expect(outlookAtMachine(caseOf(lithiumAt(-30.1))).connected).toBe(false);
  const without = { home: { batteryRoom: undefined } };
  expect(careOf(lithiumAt(-30, without)).reason).toMatch(
    / at its fastest loss, and stays clear of its lowest storage temperature: no charge/,
  );
  expect(careOf(lithiumAt(-30.1, without)).reason).toMatch(/ at its fastest loss: no charge/);
  expect(careOf(lithiumAt(-37, without))).toMatchObject({ care: 'visits', lasts: true });
  expect(careOf(lithiumAt(-37.1, without)).reason).toBe(
    'Its charge would last the rest, even at its fastest loss. It would come within 3 degrees of its lowest storage temperature, and no warm room is named, so it stays in the machine. It must not be charged below 0 °C, and Barn can fall to −37 °C in the coldest to be reckoned with: charge it on a warm day, or bring it into the warm for the charge.',
  );
  expect(careOf(lithiumAt(-37.1))).toMatchObject({
    care: 'carry-in',
    reason:
      'In the machine it would come within 3 degrees of its lowest storage temperature (the limit is 3 degrees), so it spends the rest in the warm room.',
  });
});

const CHARGED = { startPct: exactly(45), selfDischargePctPerMonth: ranged(20, 15, 30) };

test('lithium takes a charge at 0 °C and not below', () => {
  const kept = { at: { power: true }, home: { chargers: [LITHIUM] }, own: CHARGED };
  expect(careOf(lithiumAt(0, kept)).care).toBe('maintainer');
  expect(careOf(lithiumAt(-0.1, kept)).care).toBe('carry-in');
  const chosen = { ...kept, own: { ...CHARGED, care: 'maintainer' as const } };
  expect(careOf(lithiumAt(0, chosen)).warnings).toEqual([]);
  expect(careOf(lithiumAt(-0.1, chosen)).warnings).toMatchObject([{ level: 'danger' }]);
});

test('the cold of months in which it does not rest is nothing to it', () => {
  const summer = { lastUse: '2026-05-01', firstUse: '2026-09-30', proposed: false, reasons: [] };
  const kept = { at: { power: true }, home: { chargers: [LITHIUM] }, own: { ...CHARGED, care: 'maintainer' as const } };
  const low = { ...COLD_LOW, designC: [-30, -30, -30, -30, 1, 1, 1, 1, 1, -30, -30, -30] };
  expect(careOf({ ...lithiumAt(0, kept), season: summer, weather: { store: COLD_STORE, low } }).warnings).toEqual([]);
});

test('what cannot be carried is visited, whatever speaks for carrying', () => {
  const stays = { ...CHARGED, removable: false };
  expect(careOf(lithiumAt(-5, { own: stays, at: { power: true } })).reason).toMatch(
    /^It is charged on computed days \(\d+ charges? if it were alone\): none of your chargers is a maintainer that suits it\. It stays clear of its lowest storage temperature\. It must not be charged below 0 °C, and Barn can fall to −5 °C in the coldest to be reckoned with; it does not come out, so it stays in the machine: charge it on a warm day, or bring the machine into the warm for the charge\.$/,
  );
  expect(careOf({ at: { tripMinutes: 90 }, own: { removable: false } }).care).toBe('visits');
  expect(careOf({ at: { tripMinutes: 90 }, home: { batteryRoom: undefined } }).care).toBe('visits');
  expect(careOf(lithiumAt(-5, { own: CHARGED, home: { batteryRoom: undefined } })).care).toBe('visits');
});

test('a visit is one, and of two maintainers the first is named', () => {
  const other = { ...KEEPER, id: 'other', name: 'Other' };
  const one = careOf({
    at: { power: true },
    home: { chargers: [KEEPER, other] },
    season: { ...SUMMER, firstUse: '2026-07-20' },
  });
  expect(one.reason).toBe(
    'There is power at Barn and "Keeper" suits it, so its lead can stay on; without it 1 visit would be needed.',
  );
});

test('a battery that is carried in has its lead off, whatever the household says of leads', () => {
  const care = careOf({ own: { care: 'carry-in', connected: true, drainMA: exactly(3) } });
  expect(care).toMatchObject({ connected: false, reason: 'Chosen by the household.' });
  expect(careOf({ own: { care: 'maintainer', connected: false }, at: { power: true } }).connected).toBe(true);
});

test('in Fahrenheit the figures are those of the household’s units', () => {
  const us = { home: { units: 'us' as const } };
  // 3 K are 5.4 °F steps; −31 °C is −24 °F.
  expect(careOf({ own: FLAT, weather: ARCTIC, season: WINTER, ...us }).reason).toMatch(
    / \(the limit is 5 degrees\), so /,
  );
});
