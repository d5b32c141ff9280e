/** The next charges as this device knows them, with its readings: what pages of an earlier build have to say of them. */
import type { NextCharge } from './replan.ts';

const KEY = 'idle-season.next';

/** By machine; nothing where the device has planned nothing, keeps nothing, or keeps what is no plan of a charge. */
export function nextOnDevice(): Record<string, NextCharge> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return Object.fromEntries(Object.entries(kept ?? {}).filter(([, next]) => isNextCharge(next)));
  } catch {
    return {};
  }
}

function isNextCharge(value: unknown): value is NextCharge {
  if (typeof value !== 'object' || value === null) return false;
  const { name, date, said } = value as Record<string, unknown>;
  return [name, date, said].every((text) => typeof text === 'string');
}

/** What was planned on the device holds no longer. */
export function forgetNext(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Nothing was kept.
  }
}

/** Keeps the next charges of the machines that were planned. */
export function noteNext(next: Readonly<Record<string, NextCharge>>): void {
  try {
    localStorage.setItem(KEY, JSON.stringify({ ...nextOnDevice(), ...next }));
  } catch {
    // A window that keeps nothing has been told of already.
  }
}
