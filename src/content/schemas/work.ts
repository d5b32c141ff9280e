/** What comes off, what is done in the idle months, and what comes due. */
import * as z from 'zod/mini';
import { choice, count, date, flag, id, line, list, number, paragraph, quantity, say } from './parts.ts';

/** "2.5 L", "1 piece", "30 mL": a number, then what is counted. */
const amount = z
  .pipe(
    z.string({ error: () => 'an amount with its unit, such as "2 pieces" or "3.2 L"' }),
    z.transform((text, ctx) => {
      const match = /^\s*(\d+(?:[.,]\d+)?)\s+(\S.{0,19}?)\s*$/.exec(text);
      const value = Number(match?.[1]?.replace(',', '.'));
      if (!match || !(value > 0 && value <= 100000)) {
        say(ctx, { expected: 'an amount with its unit, such as "2 pieces" or "3.2 L"' });
        return z.NEVER;
      }
      return { value, unit: match[2]! };
    }),
  )
  .register(z.globalRegistry, { description: 'How much, with its unit', examples: ['2 pieces'] });

const leadDays = z.optional(count('Days from ordering to having it', 7, 0, 730));
const inStock = z.optional(flag('On the shelf already'));

export const supply = z.strictObject({
  what: line('What', 'Valve-cover gasket'),
  amount: z.optional(amount),
  leadDays,
  inStock,
});

const fastener = z.strictObject({
  what: line('Where it goes', 'Valve-cover bolts'),
  count: count('How many', 4, 1, 200),
  head: line('Head: what turns it', 'hex 10 mm', 40),
  size: z.optional(line('Thread', 'M6 × 25', 40)),
  torque: z.optional(
    quantity('torque', 'Published torque; leave out where none is published', '10 N·m', {
      min: 0.2,
      max: 1000,
    }),
  ),
  condition: z.optional(choice('Thread as the figure is meant', ['dry', 'lubricated', 'unstated'])),
  threadlock: z.optional(choice('Thread-locking compound', ['low', 'medium', 'high'])),
  antiSeize: z.optional(flag('Anti-seize compound on the thread')),
  banjo: z.optional(flag('Banjo bolt: a sealing washer on each side of its fitting')),
});

export const assemblies = list(
  z.strictObject({
    id: id('Short name that jobs and other assemblies use', 'tank'),
    name: line('Name', 'Fuel tank'),
    behind: z.optional(
      list(id('An assembly that must come off first', 'seat'), 'Assemblies that must come off before it', 40),
    ),
    offMinutes: number('Minutes to take it off', 10, 0, 6000),
    onMinutes: z.optional(number('Minutes to put it back', 15, 0, 6000)),
    fasteners: z.optional(list(fastener, 'Fasteners, with torque where it is published', 100)),
    singleUse: z.optional(
      list(
        z.strictObject({
          what: line('What', 'Sealing washer 10 mm'),
          count: z.optional(count('How many', 2, 1, 200)),
          leadDays,
          inStock,
        }),
        'Parts that are used once: gaskets, washers, split pins',
        100,
      ),
    ),
    cautions: z.optional(
      list(paragraph('Caution', 'Hold the inner nut of the stud while turning the outer one', 400), 'Cautions', 40),
    ),
    opensFluid: z.optional(choice('Fluid that is opened or spilled', ['fuel', 'oil', 'coolant', 'brake-fluid'])),
    refitNotes: z.optional(
      list(paragraph('Note', 'Route the breather hose behind the frame tube', 400), 'Notes for putting it back', 40),
    ),
    replaceNextTime: z.optional(list(supply, 'Replace when it is next off', 40)),
    safetyCritical: z.optional(flag('A fault here stops the ride')),
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
    parts: z.optional(list(supply, 'Parts and materials', 100)),
    tools: z.optional(list(line('Tool', 'Feeler gauges'), 'Tools', 60)),
    cautions: z.optional(list(paragraph('Caution', 'Cold engine only', 400), 'Cautions', 40)),
    notes: z.optional(list(paragraph('Note', 'Exhaust 0.15 mm, inlet 0.10 mm', 600), 'Notes', 40)),
    after: z.optional(list(id('A job of the same machine', 'carburettor-clean'), 'Jobs that come first', 40)),
    stand: z.optional(flag('Needs a stand')),
    bench: z.optional(flag('Needs the bench')),
    done: z.optional(flag('Finished')),
  }),
  'Repairs for the idle months',
  200,
);

const lastDone = z
  .strictObject({
    date: z.optional(date('Day', '2025-10-18')),
    odometer: z.optional(quantity('distance', 'Odometer then', '36000 km', { min: 0, max: 3e6 })),
    engineHours: z.optional(quantity('duration', 'Hour meter then', '180 h', { min: 0, max: 1e5 })),
  })
  .register(z.globalRegistry, { description: 'When it was last done' });

const every = z
  .strictObject({
    time: z.optional(quantity('months', 'Interval by calendar', '24 months', { min: 0.25, max: 600 })),
    distance: z.optional(quantity('distance', 'Interval by distance', '12000 km', { min: 10, max: 1e6 })),
    hours: z.optional(quantity('duration', 'Interval by engine hours', '100 h', { min: 1, max: 20000 })),
  })
  .check((ctx) => {
    if (Object.values(ctx.value).every((v) => v === undefined))
      say(ctx, {
        expected: 'at least one of time, distance, hours',
        fix: 'Write the interval, such as time: 24 months.',
      });
  })
  .register(z.globalRegistry, { description: 'Interval: whichever comes first' });

export const services = list(
  z.strictObject({
    id: id('Short name', 'brake-fluid'),
    what: line('What', 'Brake fluid'),
    lastDone: z.optional(lastDone),
    every,
    cameBackAfter: z.optional(
      quantity('months', 'Came back early: time from the last service until it was needed again', '14 months', {
        min: 0.25,
        max: 600,
      }),
    ),
    minutes: z.optional(number('Minutes of work', 45, 0, 6000)),
    source: z.optional(line('Where the interval comes from', 'service manual', 200)),
    supplies: z.optional(list(supply, 'Parts and materials', 60)),
    assemblies: z.optional(list(id('An assembly', 'tank'), 'What must be off for it', 60)),
  }),
  'What comes due by calendar, distance or hours',
  200,
);
