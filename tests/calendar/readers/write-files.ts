/**
 * Writes what the readers are given and what they must find into a folder:
 * `<half>-<state>.ics`, its lines `<half>-<state>.tsv` (date, title) and `<half>-<state>.uids.tsv` (UID, date, day after, title).
 *
 * `before` and `after` are the same season before and after a change: dates moved, a machine renamed with every awkward
 * character, a step removed. `both` (lines only) is what a calendar holds that replaces by UID and does not take away.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { calendarOf } from '../../../src/calendar/index.ts';
import { addDays } from '../../../src/planner/dates.ts';
import type { PlanEvent } from '../../../src/planner/season-plan.ts';
import { aPlan, changeMachine, planParts, withEvents } from '../../fixtures/plan.ts';

const [folder] = process.argv.slice(2);
if (!folder) throw new Error('found no argument, expected the folder to write to');
mkdirSync(folder, { recursive: true });

const write = (name: string, rows: string[]) => {
  // By bytes, as `sort` does in the C locale.
  const sorted = rows.map((row) => Buffer.from(row)).sort(Buffer.compare);
  writeFileSync(join(folder, name), sorted.map((row) => `${row}\n`).join(''));
};
const lines = (events: PlanEvent[]) => events.map((e) => `${e.date}\t${e.title}`);

for (const half of ['north', 'south']) {
  const south = half === 'south';
  const before = aPlan({ south });
  const parts = planParts({ south, shiftDays: 9, revised: '2026-10-08T06:05:00Z' });
  const renamed = changeMachine(parts, 'juniper', (m) => ({ ...m, name: 'Júniper, the; "old" \\ one 🏍️ 漢' }));
  const after = withEvents(
    changeMachine(renamed, 'old-fern', (m) => ({ ...m, steps: m.steps.filter((s) => s.id !== 'rust.film') })),
  );
  for (const [state, plan] of Object.entries({ before, after })) {
    writeFileSync(join(folder, `${half}-${state}.ics`), calendarOf(plan));
    write(`${half}-${state}.tsv`, lines(plan.events));
    write(
      `${half}-${state}.uids.tsv`,
      plan.events.map((e) => [e.uid, e.date, addDays(e.date, 1), e.title].join('\t')),
    );
  }
  const kept = new Set(after.events.map((e) => e.uid));
  write(`${half}-both.tsv`, lines([...after.events, ...before.events.filter((e) => !kept.has(e.uid))]));
}
