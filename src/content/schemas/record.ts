/** What was done and measured: written into a machine's file, or exported from the page into records/<machine>/. */
import * as z from 'zod/mini';
import { date, id, isInstant, line, list, paragraph, quantity, say } from './parts.ts';

const season = z
  .string()
  .check((ctx) => {
    if (!/^\d{4}-(05|11)$/.test(ctx.value))
      say(ctx, {
        expected: 'the half-year in which the middle of the rest lies, "2026-11" for November 2026 to April 2027',
        fix: 'Write the year and 05 or 11, in quotes.',
      });
  })
  .register(z.globalRegistry, {
    description:
      'The season it belongs to: the half-year, from May or from November, with the middle of the rest. Left out, the date tells',
    examples: ['2026-11'],
  });

export const readings = list(
  z.strictObject({
    date: date('Day of the reading', '2026-12-06'),
    voltage: quantity('voltage', 'Voltage at the battery posts, nothing switched on', '12.55 V', { min: 0, max: 60 }),
    temperature: quantity('temperature', 'Temperature of the battery', '4 °C', { min: -60, max: 60 }),
    rested: quantity('duration', 'Time since it was last charged or used', '12 h', { min: 0, max: 20000 }),
  }),
  'Meter readings of the battery; the loss rate learns from them',
  2000,
);

export const charged = list(
  z.strictObject({
    date: date('Day on which the charge ended', '2026-12-06'),
    to: z.optional(quantity('percent', 'State of charge reached', '100 %', { min: 1, max: 100 })),
  }),
  'Charges given during the rest',
  2000,
);

export const done = list(
  z.strictObject({
    step: line('The step, as the page names it', 'fuel-fill.stabilise', 160),
    date: date('Day on which it was done', '2026-10-25'),
    season: z.optional(season),
  }),
  'Steps that are done',
  5000,
);

export const skipped = list(
  z.strictObject({
    step: line('The step, as the page names it', 'plugs-in.exhaust', 160),
    date: date('Day on which it was left out', '2026-10-25'),
    season: z.optional(season),
    why: z.optional(line('Why', 'No plug of that size', 200)),
  }),
  'Steps of lay-up and look-ins that were left out on purpose; what they would have changed stays as it is',
  5000,
);

export const notes = list(
  z.strictObject({
    date: date('Day of the note', '2026-11-14'),
    text: paragraph('The note', 'Boot of the left carburettor is cracked'),
    assembly: z.optional(id('The assembly it is about', 'airbox')),
  }),
  'Notes',
  2000,
);

export const asLeft = list(
  z.strictObject({
    item: line('An assembly, or an open item of the start-up sheet', 'tank', 100),
    where: z.optional(line('Where the parts lie', 'Top shelf, left box')),
    since: z.optional(date('Since when', '2026-11-14')),
  }),
  'What is off or open now, and where it lies',
);

export const record = z
  .strictObject({
    format: z.optional(
      z
        .number()
        .check((ctx) => {
          if (ctx.value !== 1)
            say(ctx, {
              expected: '1, the format that this version reads',
              fix: 'The file was written by another version of Idle Season: bring this one up to date.',
            });
        })
        .register(z.globalRegistry, { description: 'The format of the record', examples: [1] }),
    ),
    machine: z.optional(id('The machine, as the folder is called', 'juniper')),
    exported: z.optional(
      z
        .string()
        .check((ctx) => {
          if (!isInstant(ctx.value))
            ctx.issues.push({
              code: 'custom',
              input: ctx.value,
              params: { expected: 'an instant in UTC, such as "2026-12-06T18:20:00Z"' },
            });
        })
        .register(z.globalRegistry, {
          description: 'When the record was exported, in UTC',
          examples: ['2026-12-06T18:20:00Z'],
        }),
    ),
    season: z.optional(season),
    readings: z.optional(readings),
    charged: z.optional(charged),
    done: z.optional(done),
    skipped: z.optional(skipped),
    notes: z.optional(notes),
    asLeft: z.optional(asLeft),
    finishedJobs: z.optional(
      list(id('A winter job that is finished', 'valve-clearances'), 'Winter jobs that are finished'),
    ),
    odometer: z.optional(quantity('distance', 'Odometer, newest first reading', '41200 km', { min: 0, max: 3e6 })),
    engineHours: z.optional(quantity('duration', 'Hour meter', '210 h', { min: 0, max: 1e5 })),
  })
  .register(z.globalRegistry, {
    title: 'Bench record',
    description: 'One export of the bench record: records/<machine>/<any name>.yaml',
  });

export type RecordFile = z.output<typeof record>;
