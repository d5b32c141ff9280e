/**
 * What makes a reminder the same reminder after the plan was made anew.
 *
 * A calendar knows a reminder by its UID alone. The UID is a version 5 UUID of a key, and the key holds only what stays when
 * dates move, wordings change or a machine joins: household, machine, rest, kind, and which one of its kind it is.
 *
 * | reminder | key after household |
 * | --- | --- |
 * | charge without a trip | machine, rest, "charge", number of the charge within the rest (done ones counted) |
 * | trip for charges | "trip", year of the household's rests, number of the trip (no machine: others may join or leave) |
 * | look-in | machine, rest, "look-in", id of its first step (which carries its number) |
 * | work of one machine in one session | machine, rest, "work", phase, place counted from the last one back |
 * | step left without a session | machine, rest, "step", step id |
 * | several of a phase left on one day | machine, rest, "steps", phase, place counted from the last one back |
 * | order | machine, rest, "order", job id or phase |
 * | coolant, fuel, paperwork, ready, day before, first use, re-check | machine, rest, its own word or id |
 *
 * Work is counted from the end because what is done drops out at the front: the sessions that remain keep their places. Only
 * its place counts, since sessions are filled anew with each plan and no step belongs to one for good.
 *
 * The rest is in the key so that next year's reminders are new ones: some calendars refuse a UID that was deleted once.
 */
import { v5 } from 'uuid';
import { restKey } from '../rest-key.ts';
import type { MachinePlan } from '../season-plan.ts';

/** Namespace of every UID; changing it would make all reminders new ones. */
const NAMESPACE = '5d4c8b1e-7c0f-4a36-9f5d-0b6f2f4f7a91';

export type KeyPart = string | number;

/**
 * The UID of a key.
 * @param key - parts that stay the same as long as the reminder is the same one
 * @returns version 5 UUID
 * Source: RFC 9562 (2024), section 5.5.
 */
export function uidOf(key: readonly KeyPart[]): string {
  return v5(JSON.stringify(key), NAMESPACE);
}

/**
 * The year, from May to April, in which most of a household's rests have their middle; the earliest where two have as many.
 * @param machines - all machines of the plan
 */
export function householdYear(machines: readonly MachinePlan[]): string {
  const counts = new Map<string, number>();
  for (const { season } of machines) {
    const year = restKey(season).slice(0, 4);
    counts.set(year, (counts.get(year) ?? 0) + 1);
  }
  const [most] = [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  return most?.[0] ?? '';
}
