/** The next charges as this device knows them, with its readings: what pages of an earlier build have to say of them. */
import { forget, store, storedMembers } from '../stored.ts';
import type { NextCharge } from './replan.ts';

const KEY = 'idle-season.next';

/** By machine; nothing where the device has planned nothing, keeps nothing, or keeps what is no plan of a charge. */
export function nextOnDevice(): Record<string, NextCharge> {
  return Object.fromEntries(storedMembers(KEY).filter((pair): pair is [string, NextCharge] => isNextCharge(pair[1])));
}

function isNextCharge(value: unknown): value is NextCharge {
  if (typeof value !== 'object' || value === null) return false;
  const { name, date, said } = value as Record<string, unknown>;
  return [name, date, said].every((text) => typeof text === 'string');
}

/** What was planned on the device holds no longer. */
export const forgetNext = (): void => forget(KEY);

/** Keeps the next charges of the machines that were planned; a window that keeps nothing has been told of already. */
export function noteNext(next: Readonly<Record<string, NextCharge>>): void {
  store(KEY, JSON.stringify({ ...nextOnDevice(), ...next }));
}
