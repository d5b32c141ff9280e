import { addDays, daysBetween, earlier, later } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import type { MachinePlan, SupplyLine } from '../season-plan.ts';
import { formatSupply } from '../units/index.ts';
import { withinSentence, writtenDay } from '../written.ts';
import { type Draft, machineDraft, PHASES, type PlanWithoutEvents } from './draft.ts';
import { lines, readerOf } from './words.ts';

/** What one job, or one phase of the work, of one machine still needs. */
interface Order {
  machine: MachinePlan;
  key: string;
  purpose: string;
  /** The earliest of the order-by dates of its things. */
  date: IsoDate;
  items: { line: SupplyLine; amount: number; orderBy: IsoDate; needBy: IsoDate }[];
}

/**
 * Reminders to order, one for each job and one for each phase of each machine, on the earliest order-by date of its things.
 *
 * What is in stock, and what only done steps need, is left out.
 * @param plan - the plan
 */
export function orderDrafts(plan: PlanWithoutEvents): Draft[] {
  const orders = new Map<string, Order>();
  for (const line of plan.supplies) {
    if (line.inStock) continue;
    const leadDays = daysBetween(line.orderBy ?? line.needBy, line.needBy);
    for (const { machine: id, step, job, amount } of line.for) {
      const machine = plan.machines.find((m) => m.id === id);
      if (!machine) continue;
      // What a step uses up and is bought on its day, as petrol is, is not ordered; what a part takes nobody knows.
      if (leadDays === 0 && step !== undefined) continue;
      const purpose = purposeOf(machine, step, job);
      if (!purpose) continue;
      // The line is of all machines: what one machine needs in spring is not ordered in autumn for another's sake.
      const needBy = later(machine.steps.find((s) => s.id === step)?.date ?? line.needBy, line.needBy);
      const date = addDays(needBy, -leadDays);
      if (date > machine.startUp.firstUse) continue;
      const key = JSON.stringify([id, purpose.key]);
      const order = orders.get(key) ?? { machine, ...purpose, date, items: [] };
      order.date = earlier(order.date, date);
      order.items.push({ line, amount, orderBy: date, needBy });
      orders.set(key, order);
    }
  }
  return [...orders.values()].map(({ machine, key, purpose, date, items }) =>
    machineDraft(plan, machine, ['order', key], {
      date,
      title: `Order for ${machine.name}, ${withinSentence(purpose)}: ${items.length === 1 ? items[0]!.line.what : `${items.length} items`}`,
      label: `Order for ${machine.name}`,
      text: lines(
        ...items.map(
          ({ line, amount, orderBy, needBy }) =>
            `- ${line.what}, ${line.about ? 'about ' : ''}${formatSupply(amount, line.unit, readerOf(plan), line.what)}: ` +
            `order by ${writtenDay(orderBy, plan.household.locale)}, needed on ${writtenDay(needBy, plan.household.locale)}`,
        ),
        `Ordered later, it may not be there on the day ${key.startsWith('phase:') ? 'of the work' : 'the machine is opened'}.`,
      ),
      category: 'order',
      path: '/shopping/',
    }),
  );
}

/** What a thing is for, undefined when that is done already. */
function purposeOf(
  machine: MachinePlan,
  stepId?: string,
  jobId?: string,
): { key: string; purpose: string } | undefined {
  if (jobId !== undefined) {
    const job = machine.strip?.jobs.find((j) => j.id === jobId);
    return { key: `job:${jobId}`, purpose: job?.name ?? jobId };
  }
  const step = machine.steps.find((s) => s.id === stepId);
  if (step?.done) return undefined;
  const phase = step?.phase ?? 'winter';
  return { key: `phase:${phase}`, purpose: PHASES[phase].word };
}
