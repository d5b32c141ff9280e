/** Whole households, as the content files that somebody could have written. */
import fc from 'fast-check';
import { stringify } from 'yaml';
import type { ContentFile } from '../../src/content/read.ts';
import { CHEMISTRY_NAMES, KINDS } from '../../src/content/schemas/household.ts';
import { addDays } from '../../src/planner/dates.ts';
import { type MachineContent, machineArb } from './machine.ts';
import { climateContent, type PlaceContent, placeArb } from './places.ts';
import { lineArb, quantityArb, some } from './text.ts';

/** One case: a folder of content, and the day of the plan. */
export interface Case {
  asOf: string;
  files: { path: string; content: Record<string, unknown> }[];
  /** With all trials, as the build plans; else as the page does between two frames. */
  whole: boolean;
}

/** Zones with clock changes by the hour, the half hour, around Ramadan, and days that were left out. */
const ZONES = [
  'America/Edmonton',
  'America/St_Johns',
  'Europe/Oslo',
  'Africa/Casablanca',
  'Asia/Kathmandu',
  'Asia/Tokyo',
  'Australia/Lord_Howe',
  'Pacific/Auckland',
  'Pacific/Apia',
  'Pacific/Kiritimati',
  'Antarctica/Troll',
  'UTC',
] as const;

/** Days of leap years, of clock changes, of the turn of the year, and any others. */
const asOfArb = fc.oneof(
  fc.constantFrom('2024-02-29', '2027-03-28', '2026-10-25', '2026-12-31', '2027-01-01', '2028-02-28', '2028-02-29'),
  fc.nat(365 * 9).map((n) => addDays('2024-01-01', n)),
);

const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;

const hoursArb = fc.oneof(
  { arbitrary: fc.constant({ saturday: 5, sunday: 4 }), weight: 3 },
  {
    arbitrary: some(
      Object.fromEntries(WEEKDAYS.map((day) => [day, fc.constantFrom(0, 0.5, 1, 2, 4, 8, 24)])) as Record<
        (typeof WEEKDAYS)[number],
        fc.Arbitrary<number>
      >,
    ),
    weight: 2,
  },
);

function householdArb(asOf: string, placeIds: readonly string[]) {
  const charger = fc
    .tuple(
      quantityArb(0.1, 12, 'A', 1),
      fc.subarray([...CHEMISTRY_NAMES], { minLength: 1 }),
      some({ maintainer: fc.boolean(), place: fc.constantFrom(...placeIds) }),
      lineArb,
    )
    .map(([current, chemistries, more, name]) => ({ name, current, chemistries, ...more }));
  const numbered = <T extends object>(list: T[], stem: string) =>
    list.map((item, i) => ({ id: `${stem}-${i + 1}`, ...item }));
  return fc
    .record({
      name: lineArb,
      timeZone: fc.constantFrom(...ZONES),
      units: fc.constantFrom('metric', 'us', 'imperial'),
      chargers: fc.array(charger, { maxLength: 6 }).map((list) => numbered(list, 'charger')),
      more: some({
        locale: fc.constantFrom('en-GB', 'en-US', 'de-AT', 'ar-EG', 'fa-IR', 'th-TH', 'ja-JP'),
        clock: fc.constantFrom('24h', '12h'),
        country: fc.constantFrom('CA', 'US', 'GB', 'DE', 'NO', 'NZ', 'ZZ'),
        hours: hoursArb,
        away: fc.array(
          fc
            .tuple(fc.integer({ min: -200, max: 600 }), fc.integer({ min: 0, max: 200 }))
            .map(([from, days]) => ({ from: addDays(asOf, from), to: addDays(asOf, from + days) })),
          { maxLength: 4 },
        ),
        hands: fc.integer({ min: 1, max: 4 }),
        stands: fc
          .array(fc.record({ name: lineArb, kinds: fc.subarray([...KINDS], { minLength: 1 }) }), { maxLength: 2 })
          .map((list) => numbered(list, 'stand')),
        fuelCare: some({
          stabiliserDose: quantityArb(0.1, 100, 'mL/L', 1),
          can: quantityArb(0.5, 60, 'L', 1),
          cans: fc.integer({ min: 0, max: 10 }),
        }),
        batteryRoom: fc.record({ name: lineArb, temperature: quantityArb(-10, 35, '°C', 0) }),
        siteUrl: fc.constantFrom('https://garage.example', 'https://garage.example/a/b/'),
      }),
    })
    .map(({ more, ...needed }) => ({ id: 'generated', revised: '2026-11-25T07:00:00Z', ...needed, ...more }));
}

export interface Sizes {
  /** Stores to draw from; fresh ones are drawn where there are none, each with weather of its own. */
  pool: readonly PlaceContent[];
  openItems: readonly string[];
  stepIds: readonly string[];
  machines: number;
  /** One case in so many is planned with all trials. */
  wholeOneIn: number;
}

/**
 * A household of one to some machines.
 * @param sizes - what it is drawn from
 */
export function caseArb(sizes: Sizes): fc.Arbitrary<Case> {
  const place = sizes.pool.length > 0 ? fc.constantFrom(...sizes.pool) : placeArb;
  return fc.tuple(asOfArb, fc.array(place, { minLength: 1, maxLength: 3 })).chain(([asOf, stores]) => {
    const places = stores.map((store, i) => ({ id: `place-${i + 1}`, ...store }));
    return householdArb(
      asOf,
      places.map((p) => p.id),
    ).chain((home) => {
      const around = {
        asOf,
        places,
        maintainers: home.chargers.some((c) => c.maintainer === true),
        batteryRoom: home.batteryRoom !== undefined,
        openItems: sizes.openItems,
        stepIds: sizes.stepIds,
      };
      return fc
        .record({
          machines: fc.array(machineArb(around), { minLength: 1, maxLength: sizes.machines }),
          whole: fc.integer({ min: 1, max: sizes.wholeOneIn }).map((n) => n === sizes.wholeOneIn),
        })
        .map(({ machines, whole }) => ({ asOf, whole, files: filesOf(home, places, machines) }));
    });
  });
}

function filesOf(
  home: Record<string, unknown>,
  places: readonly ({ id: string } & PlaceContent)[],
  machines: readonly MachineContent[],
): Case['files'] {
  return [
    { path: 'household.yaml', content: home },
    ...[...new Set(places.map((p) => p.climate))].map((id) => ({
      path: `climates/${id}.yaml`,
      content: climateContent(id),
    })),
    ...places.map(({ id, ...content }) => ({
      path: `places/${id}.yaml`,
      // The name is part of what is kept from case to case, so it stands for the store alone.
      content: { name: `Store in ${content.climate}`, ...content },
    })),
    ...machines.flatMap(({ file, record }, i) => [
      { path: `machines/machine-${i + 1}.yaml`, content: file },
      ...(record ? [{ path: `records/machine-${i + 1}/all.yaml`, content: record }] : []),
    ]),
  ];
}

/** The files as they would stand on disk. */
export function writtenFiles(drawn: Case): ContentFile[] {
  return drawn.files.map(({ path, content }) => ({
    path,
    bytes: stringify(content, { defaultStringType: 'QUOTE_DOUBLE', defaultKeyType: 'PLAIN', collectionStyle: 'any' }),
  }));
}
