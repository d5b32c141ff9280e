/** household.yaml: the people, their hours and what they work with. */
import * as z from 'zod/mini';
import { CHEMISTRY_NAMES, KINDS } from '../kinds.ts';
import { nearest } from '../problem.ts';
import { choice, count, date, flag, id, isInstant, line, list, number, quantity, say } from './parts.ts';

export { CHEMISTRY_NAMES, KINDS };

const day = (name: string) => z.optional(number(`Hours for the machines on a ${name}`, 3, 0, 24));

function isZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    // "MST" and the like are known, and never change their clocks.
    return zone === 'UTC' || (zone.includes('/') && !/^[+-]/.test(zone));
  } catch {
    return false;
  }
}

/** The zone that a mistyped one is nearest to. */
function zoneMeant(zone: string): string | undefined {
  const known = Intl.supportedValuesOf('timeZone');
  const plain = zone.trim().replaceAll(' ', '_');
  const city = known.filter((name) => name.toLowerCase().endsWith(`/${plain.toLowerCase()}`));
  return city.length === 1 ? city[0] : plain.includes('/') ? nearest(plain, known) : undefined;
}

function isLocale(tag: string): boolean {
  try {
    // Words such as "english" are tags by their form, and no language.
    return /^[a-z]{2,3}(-|$)/i.test(tag) && Intl.getCanonicalLocales(tag).length === 1;
  } catch {
    return false;
  }
}

const REGIONS = new Intl.DisplayNames('en', { type: 'region', fallback: 'none' });

/** True for the code of a country that there is. */
const isCountry = (code: string) => REGIONS.of(code) !== undefined;

const charger = z.strictObject({
  id: id('Short name for files', 'bench-charger'),
  name: line('Name', 'Bench charger'),
  current: quantity('current', 'Charging current', '2 A', { min: 0.1, max: 100 }),
  chemistries: z
    .array(choice('Battery chemistry', CHEMISTRY_NAMES))
    .check(z.minLength(1))
    .register(z.globalRegistry, { description: 'Chemistries it has a setting for', examples: [['flooded', 'agm']] }),
  maintainer: z.optional(flag('Can stay connected for months')),
  place: z.optional(id('Where it stays; leave out when it is carried about', 'attached-garage')),
});

const stand = z.strictObject({
  id: id('Short name for files', 'paddock-stand'),
  name: line('Name', 'Paddock stand'),
  kinds: z
    .array(choice('Kind of machine', KINDS))
    .check(z.minLength(1))
    .register(z.globalRegistry, { description: 'Kinds of machine it carries', examples: [['motorcycle']] }),
});

const away = z
  .strictObject({
    from: date('First day away', '2026-12-22'),
    to: date('Last day away', '2027-01-03'),
    why: z.optional(line('Why', 'Family')),
  })
  .check((ctx) => {
    if (ctx.value.to < ctx.value.from) {
      say(ctx, {
        found: `${ctx.value.to} as the last day and ${ctx.value.from} as the first`,
        expected: 'the last day on or after the first',
        fix: 'Swap the two dates.',
      });
    }
  });

export const household = z
  .strictObject({
    id: id('Stays the same for ever: all reminders are known by it', 'tarn-hollow-garage'),
    name: line('Name', 'The garage at Tarn Hollow'),
    timeZone: z
      .string()
      .check((ctx) => {
        if (isZone(ctx.value)) return;
        const meant = zoneMeant(ctx.value);
        say(ctx, {
          expected: 'a time zone by its IANA name, such as "Europe/Oslo"',
          fix: meant ? `Write ${meant}.` : 'Write area and city, as in the list of your phone or computer.',
        });
      })
      .register(z.globalRegistry, { description: 'IANA time zone', examples: ['America/Edmonton'] }),
    locale: z.optional(
      z
        .string()
        .check((ctx) => {
          if (!isLocale(ctx.value))
            say(ctx, { expected: 'a language tag such as "en-GB"', fix: 'Write language, hyphen, country.' });
        })
        .register(z.globalRegistry, {
          description: 'How dates and numbers are written, as a language tag',
          examples: ['en-CA'],
        }),
    ),
    clock: z.optional(choice('Clock times', ['24h', '12h'])),
    units: choice('The units in which everything is said', ['metric', 'us', 'imperial']),
    country: z.optional(
      z
        .string()
        .check((ctx) => {
          if (ctx.value === 'UK') say(ctx, { expected: 'a code of ISO 3166', fix: 'Write GB.' });
          else if (/^[A-Z]{2}$/.test(ctx.value)) {
            if (!isCountry(ctx.value))
              say(ctx, { expected: 'the code of a country', fix: 'Write the two-letter code of ISO 3166.' });
          } else
            say(ctx, {
              expected: 'two capital letters, such as "CA"',
              fix: /^[a-z]{2}$/i.test(ctx.value)
                ? `Write ${ctx.value.toUpperCase()}.`
                : 'Write the two-letter code of ISO 3166.',
            });
        })
        .register(z.globalRegistry, {
          description: 'Country code, for the local limits on petrol kept at home',
          examples: ['CA'],
        }),
    ),
    hours: z.optional(
      z
        .strictObject({
          monday: day('Monday'),
          tuesday: day('Tuesday'),
          wednesday: day('Wednesday'),
          thursday: day('Thursday'),
          friday: day('Friday'),
          saturday: day('Saturday'),
          sunday: day('Sunday'),
        })
        .register(z.globalRegistry, {
          description: 'Hours for the machines, by weekday; a day left out has none',
          examples: [{ saturday: 5, sunday: 3 }],
        }),
    ),
    away: z.optional(list(away, 'Days on which nobody is there')),
    hands: z.optional(count('Pairs of hands that work at the same time', 1, 1, 20)),
    chargers: z.optional(list(charger, 'Battery chargers', 50)),
    stands: z.optional(list(stand, 'Stands that lift a machine off its tyres', 50)),
    fuelCare: z.optional(
      z
        .strictObject({
          stabiliserDose: z.optional(
            quantity('dose', 'Dose on the label of the fuel stabiliser you have', '4 mL/L', {
              min: 0.1,
              max: 100,
            }),
          ),
          can: z.optional(quantity('volume', 'Room in one approved fuel can', '10 L', { min: 0.5, max: 60 })),
          cans: z.optional(count('Approved fuel cans at hand', 2, 0, 100)),
        })
        .register(z.globalRegistry, { description: 'What there is for keeping fuel' }),
    ),
    batteryRoom: z.optional(
      z
        .strictObject({
          name: line('Name', 'Hall cupboard'),
          temperature: quantity('temperature', 'Its temperature in the cold months', '16 °C', { min: -10, max: 35 }),
        })
        .register(z.globalRegistry, { description: 'The room a battery can be carried to' }),
    ),
    siteUrl: z.optional(
      z
        .pipe(
          z.string().check((ctx) => {
            if (!/^https:\/\/[^\s/?#]+(\/[^\s?#]*)?$/.test(ctx.value))
              say(ctx, {
                expected: 'an address that begins with https://',
                fix: 'Write the address of the published site, or delete the line.',
              });
          }),
          z.transform((url) => url.replace(/\/+$/, '')),
        )
        .register(z.globalRegistry, {
          description: 'Address of the published site: links in calendars',
          examples: ['https://garage.example'],
        }),
    ),
    revised: z.optional(
      z
        .string()
        .check((ctx) => {
          if (!isInstant(ctx.value)) {
            say(ctx, {
              expected: 'an instant in UTC, such as "2026-11-25T07:00:00Z"',
              fix: 'Write date, T, time, Z, in quotes; or delete the line to take the files’ own times.',
            });
          }
        })
        .register(z.globalRegistry, {
          description: 'Last change of the content, in UTC; left out, the newest file time counts',
          examples: ['2026-11-25T07:00:00Z'],
        }),
    ),
    seed: z.optional(
      count('Seed of the weather drawn from the normals: the same seed, the same plan', 1, 0, 2147483647),
    ),
  })
  .register(z.globalRegistry, { title: 'Household', description: 'People, hours, tools: household.yaml' });

export type HouseholdFile = z.output<typeof household>;
