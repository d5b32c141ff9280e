/** A procedure: steps of lay-up, look-in, start-up or season swap, for the machines that `when` picks. */
import * as z from 'zod/mini';
import type { ProcedureStep } from '../../planner/household.ts';
import { STAGES } from '../../planner/ledger/index.ts';
import {
  AMOUNT_NAMES,
  AMOUNTS,
  CAUTION_IDS,
  FACTS,
  type FactRow,
  unknownAmountsOf,
} from '../../planner/tasks/index.ts';
import { isId } from '../ids.ts';
import { nearest } from '../problem.ts';
import { choice, count, flag, id, line, list, number, paragraph, type Said, say } from './parts.ts';

/** Facts as nested optional fields, so that an unknown name or value is found at its own place in the file. */
const when = factFields('', 'Which machines: every fact named must be so; a list means any of its values');

function factFields(
  prefix: string,
  description: string,
): z.ZodMiniObject<Record<string, z.ZodMiniOptional<z.ZodMiniType>>> {
  const inside = FACTS.filter((row) => row.path.startsWith(prefix));
  const names = [...new Set(inside.map((row) => row.path.slice(prefix.length).split('.')[0]!))];
  const shape = Object.fromEntries(
    names.map((name) => {
      const row = FACTS.find((candidate) => candidate.path === prefix + name);
      return [name, z.optional(row ? factValue(row) : factFields(`${prefix}${name}.`, `Facts of: ${name}`))];
    }),
  );
  return z.strictObject(shape).register(z.globalRegistry, { description });
}

function factValue(row: FactRow): z.ZodMiniType {
  const meta = { description: row.meaning, examples: [row.values === 'yes or no' ? true : row.values[0]] };
  if (row.values === 'yes or no') return z.boolean().register(z.globalRegistry, meta);
  const one = z.enum(row.values as [string, ...string[]]);
  return z.union([one, z.array(one).check(z.minLength(1))]).register(z.globalRegistry, meta);
}

/** "1 piece", or the {name} of a computed amount. */
const supplyAmount = z
  .pipe(
    z.string({ error: () => 'an amount with its unit, such as "1 piece", or a computed one, such as "{oil}"' }),
    z.transform((text, ctx) => {
      const name = /^\{(.*)\}$/.exec(text.trim())?.[1];
      if (name !== undefined) {
        const row = AMOUNTS.find((candidate) => candidate.name === name && candidate.unit !== 'text');
        if (row) return { amount: 0, unit: row.unit === '' ? 'pieces' : row.unit, amountOf: name };
        say(ctx, unknownAmount(name));
        return z.NEVER;
      }
      const match = /^\s*(\d+(?:[.,]\d+)?)\s+(\S.{0,19}?)\s*$/.exec(text);
      const value = Number(match?.[1]?.replace(',', '.'));
      if (!match || !(value > 0 && value <= 100000)) {
        say(ctx, { expected: 'an amount with its unit, such as "1 piece", or a computed one, such as "{oil}"' });
        return z.NEVER;
      }
      return { amount: value, unit: match[2]!, amountOf: undefined };
    }),
  )
  .register(z.globalRegistry, { description: 'How much, with its unit, or a computed amount', examples: ['1 piece'] });

const supply = z.strictObject({
  what: line('What is used up', 'Oil filter'),
  amount: supplyAmount,
  leadDays: z.optional(count('Days from ordering to having it; 7 where left out', 7, 0, 730)),
  inStock: z.optional(flag('On the shelf already')),
});

const item = z
  .string()
  .check((ctx) => {
    const [kind, rest, more] = ctx.value.split(':');
    const sound = isId(kind!) && (rest === undefined || (kind === 'assembly' && isId(rest))) && more === undefined;
    if (!sound)
      say(ctx, { expected: 'a short name of small letters, digits and hyphens', fix: 'Write it as "fuel-tap-shut".' });
  })
  .register(z.globalRegistry, { description: 'Name of the open item', examples: ['fuel-tap-shut'] });

const opened = z.strictObject({
  item,
  state: line('How the machine is left', 'fuel tap shut', 200),
  safetyCritical: z.optional(flag('Forgetting it is dangerous')),
});

const stepRef = z
  .string()
  .check((ctx) => {
    const parts = ctx.value.split('.');
    if (!(parts.length <= 2 && parts.every(isId))) {
      say(ctx, {
        expected: 'a procedure, or a procedure and its step with a dot between',
        fix: 'Write it as "oil.drain".',
      });
    }
  })
  .register(z.globalRegistry, { description: 'A procedure, or one step of it', examples: ['oil.drain'] });

const NEEDS = ['dry-day', 'warm-engine', 'stand', 'charger', 'bench', 'power'] as const;
const EACH = ['tyre', 'charge', 'look-in', 'look-in-without-charge', 'service', 'paper', 'paused-paper'] as const;
const DEADLINES = [
  'last-use',
  'first-frost-in-store',
  'coolant-freezes',
  'lay-up-end',
  'drained-fuel-use-by',
  'first-use',
  'first-use-eve',
  'ride-end',
] as const;

const step = z
  .strictObject({
    id: id('Short name, unique in the procedure; reminders hang on it', 'drain'),
    title: line('What is done, with {names} of computed amounts', 'Add {stabiliserDose} of stabiliser', 140),
    detail: z.optional(paragraph('How it is done', 'Pour it in before the last fill, so that it mixes.', 1500)),
    when: z.optional(when),
    each: z.optional(choice('Repeat the step for each tyre group, charge, visit, service item due, or paper', EACH)),
    covers: z.optional(list(id('A service item', 'engine-oil'), 'Service items that this step does', 20)),
    minutes: number('Minutes of work', 15, 0, 600),
    tools: z.optional(list(line('Tool', 'Oil filter wrench'), 'Tools', 20)),
    supplies: z.optional(list(supply, 'What is used up', 20)),
    cautions: z.optional(
      list(
        z
          .string()
          .check((ctx) => {
            if (CAUTION_IDS.includes(ctx.value)) return;
            const near = nearest(ctx.value, CAUTION_IDS);
            const expected = near ? `"${near}"` : `one of ${CAUTION_IDS.join(', ')}`;
            say(ctx, { expected, fix: near ? `Write ${near}.` : 'Write one of these.' });
          })
          .register(z.globalRegistry, { description: 'Id of a caution', examples: ['petrol-vapour'] }),
        'Cautions shown with the step',
        10,
      ),
    ),
    why: paragraph('Why it is done', 'Used oil holds acid and water.', 600),
    source: z.optional(line('Where it comes from', 'common practice', 300)),
    opens: z.optional(list(opened, 'What the step leaves changed until a start-up step closes it', 10)),
    closes: z.optional(
      list(item, 'Open items that the step closes; it stands on the sheet only where one of them is open', 10),
    ),
    after: z.optional(list(stepRef, 'What comes first, where it is there', 40)),
    stage: z.optional(choice('Start-up only: where in the order of the sheet', STAGES as [string, ...string[]])),
    safetyCritical: z.optional(flag('Countersigned on the sheet')),
    doNotRide: z.optional(
      paragraph('What stops the ride when the check fails', 'The brake lever comes to the bar.', 300),
    ),
    needs: z.optional(list(choice('What must be at hand', NEEDS), 'What must be at hand', 6)),
    deadline: z.optional(choice('What the step must be done before', DEADLINES)),
    waitH: z.optional(number('Hours before a step that follows it', 2, 0, 336)),
    sameSession: z.optional(flag('Done on the same day as the step before it, with no break between')),
    reading: z.optional(line('Unit of a reading to write on the sheet', 'V', 20)),
  })
  .check((ctx) => {
    const value = ctx.value;
    const plan = { ...value, supplies: (value.supplies ?? []).map((s) => ({ ...s, ...s.amount })) };
    for (const name of unknownAmountsOf(plan as unknown as ProcedureStep)) {
      const field = (['title', 'detail', 'why', 'doNotRide'] as const).find((f) => value[f]?.includes(`{${name}}`));
      sayAt(ctx, field === undefined ? ['supplies'] : [field], unknownAmount(name, value.each));
    }
  });

/** Says something of a field inside what is checked. */
function sayAt(ctx: z.core.ParsePayload, path: (string | number)[], said: Said): void {
  ctx.issues.push({ code: 'custom', input: ctx.value, path, params: said, message: said.expected });
}

function unknownAmount(name: string, each?: string) {
  const row = AMOUNTS.find((candidate) => candidate.name === name);
  if (row?.each !== undefined && row.each !== each) {
    return { found: `{${name}}`, expected: `it only in a step with each: ${row.each}`, fix: `Add each: ${row.each}.` };
  }
  const near = nearest(name, AMOUNT_NAMES);
  return {
    found: `{${name}}`,
    expected: near ? `{${near}}` : `one of {${AMOUNT_NAMES.join('}, {')}}`,
    fix: near ? `Write {${near}}.` : 'Use a name of the table of amounts, or write the figure out.',
  };
}

export const procedureSchema = z
  .strictObject({
    title: line('What the procedure is for', 'Engine oil and filter'),
    phase: choice('When it is done', ['lay-up', 'look-in', 'start-up', 'swap']),
    order: z.optional(number('Place among the procedures of its phase, small first', 30, 0, 1000)),
    when: z.optional(when),
    steps: list(step, 'The steps, in the order in which they are done', 60).check(z.minLength(1)),
  })
  .check((ctx) => {
    if (!ctx.value.steps[0]?.sameSession) return;
    const fix = 'Delete the line, or put the step behind the one that it goes on from.';
    sayAt(ctx, ['steps', 0, 'sameSession'], { expected: 'it only on a step that has one before it', fix });
  })
  .register(z.globalRegistry, { description: 'A procedure' });

export type ProcedureFile = z.output<typeof procedureSchema>;
