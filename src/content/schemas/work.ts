/** What comes off, what is done in the idle months, and what comes due. */
import { z } from 'zod';
import { choice, count, date, flag, id, line, list, number, paragraph, quantity, say } from './parts.ts';

/** "2.5 L", "1 piece", "30 mL": a number, then what is counted. */
const amount = z
  .string({ error: () => 'an amount with its unit, such as "2 pieces" or "3.2 L"' })
  .transform((text, ctx) => {
    const match = /^\s*(\d+(?:[.,]\d+)?)\s+(\S.{0,19}?)\s*$/.exec(text);
    const value = Number(match?.[1]?.replace(',', '.'));
    if (!match || !(value > 0 && value <= 100000)) {
      say(ctx, { expected: 'an amount with its unit, such as "2 pieces" or "3.2 L"' });
      return z.NEVER;
    }
    return { value, unit: match[2]! };
  })
  .meta({ description: 'How much, with its unit', examples: ['2 pieces'] });

const leadDays = count('Days from ordering to having it', 7, 0, 730).optional();
const inStock = flag('On the shelf already').optional();

export const supply = z.strictObject({
  what: line('What', 'Valve-cover gasket'),
  amount: amount.optional(),
  leadDays,
  inStock,
});

const fastener = z.strictObject({
  what: line('Where it goes', 'Valve-cover bolts'),
  count: count('How many', 4, 1, 200),
  head: line('Head: what turns it', 'hex 10 mm', 40),
  size: line('Thread', 'M6 × 25', 40).optional(),
  torque: quantity('torque', 'Published torque; leave out where none is published', '10 N·m', {
    min: 0.2,
    max: 1000,
  }).optional(),
  condition: choice('Thread as the figure is meant', ['dry', 'lubricated', 'unstated']).optional(),
  threadlock: choice('Thread-locking compound', ['low', 'medium', 'high']).optional(),
  antiSeize: flag('Anti-seize compound on the thread').optional(),
  banjo: flag('Banjo bolt: a sealing washer on each side of its fitting').optional(),
});

export const assemblies = list(
  z.strictObject({
    id: id('Short name that jobs and other assemblies use', 'tank'),
    name: line('Name', 'Fuel tank'),
    behind: list(
      id('An assembly that must come off first', 'seat'),
      'Assemblies that must come off before it',
      40,
    ).optional(),
    offMinutes: number('Minutes to take it off', 10, 0, 6000),
    onMinutes: number('Minutes to put it back', 15, 0, 6000).optional(),
    fasteners: list(fastener, 'Fasteners, with torque where it is published', 100).optional(),
    singleUse: list(
      z.strictObject({
        what: line('What', 'Sealing washer 10 mm'),
        count: count('How many', 2, 1, 200).optional(),
        leadDays,
        inStock,
      }),
      'Parts that are used once: gaskets, washers, split pins',
      100,
    ).optional(),
    cautions: list(
      paragraph('Caution', 'Hold the inner nut of the stud while turning the outer one', 400),
      'Cautions',
      40,
    ).optional(),
    opensFluid: choice('Fluid that is opened or spilled', ['fuel', 'oil', 'coolant', 'brake-fluid']).optional(),
    refitNotes: list(
      paragraph('Note', 'Route the breather hose behind the frame tube', 400),
      'Notes for putting it back',
      40,
    ).optional(),
    replaceNextTime: list(supply, 'Replace when it is next off', 40).optional(),
    safetyCritical: flag('A fault here stops the ride').optional(),
  }),
  'Groups of parts that come off as a unit',
  200,
);

export const jobs = list(
  z.strictObject({
    id: id('Short name', 'valve-clearances'),
    name: line('Name', 'Valve clearances'),
    assemblies: list(id('An assembly', 'tank'), 'What must be off for it', 100),
    minutes: number('Minutes of work once everything is off', 60, 0, 60000),
    parts: list(supply, 'Parts and materials', 100).optional(),
    tools: list(line('Tool', 'Feeler gauges'), 'Tools', 60).optional(),
    cautions: list(paragraph('Caution', 'Cold engine only', 400), 'Cautions', 40).optional(),
    notes: list(paragraph('Note', 'Exhaust 0.15 mm, inlet 0.10 mm', 600), 'Notes', 40).optional(),
    after: list(id('A job of the same machine', 'carburettor-clean'), 'Jobs that come first', 40).optional(),
    stand: flag('Needs a stand').optional(),
    bench: flag('Needs the bench').optional(),
    done: flag('Finished').optional(),
  }),
  'Repairs for the idle months',
  200,
);

const lastDone = z
  .strictObject({
    date: date('Day', '2025-10-18').optional(),
    odometer: quantity('distance', 'Odometer then', '36000 km', { min: 0, max: 3e6 }).optional(),
    engineHours: quantity('duration', 'Hour meter then', '180 h', { min: 0, max: 1e5 }).optional(),
  })
  .meta({ description: 'When it was last done' });

const every = z
  .strictObject({
    time: quantity('months', 'Interval by calendar', '24 months', { min: 0.25, max: 600 }).optional(),
    distance: quantity('distance', 'Interval by distance', '12000 km', { min: 10, max: 1e6 }).optional(),
    hours: quantity('duration', 'Interval by engine hours', '100 h', { min: 1, max: 20000 }).optional(),
  })
  .check((ctx) => {
    if (Object.values(ctx.value).every((v) => v === undefined))
      say(ctx, {
        expected: 'at least one of time, distance, hours',
        fix: 'Write the interval, such as time: 24 months.',
      });
  })
  .meta({ description: 'Interval: whichever comes first' });

export const services = list(
  z.strictObject({
    id: id('Short name', 'brake-fluid'),
    what: line('What', 'Brake fluid'),
    lastDone: lastDone.optional(),
    every,
    cameBackAfter: quantity(
      'months',
      'Came back early: time from the last service until it was needed again',
      '14 months',
      { min: 0.25, max: 600 },
    ).optional(),
    minutes: number('Minutes of work', 45, 0, 6000).optional(),
    source: line('Where the interval comes from', 'service manual', 200).optional(),
    supplies: list(supply, 'Parts and materials', 60).optional(),
    assemblies: list(id('An assembly', 'tank'), 'What must be off for it', 60).optional(),
  }),
  'What comes due by calendar, distance or hours',
  200,
);
