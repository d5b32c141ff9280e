import type { Household, IsoDate, Machine } from '../household.ts';
import { blendRow } from './blends.ts';

/**
 * Machines of the household in which drained fuel can be used up: in use within the window, and fit for that fuel.
 * @param machine - the machine that was drained
 * @param household - whose other machines are looked at
 * @param from - day of draining
 * @param to - day by which it is to be used up
 * @returns names
 * Source: common practice: ethanol no higher than the machine takes; two-stroke mixture only into a machine run on mixture.
 */
export function takersOf(machine: Machine, household: Household, from: IsoDate, to: IsoDate): string[] {
  const drained = machine.fuel;
  if (!drained) return [];
  return household.machines
    .filter((other) => other.id !== machine.id && other.fuel !== undefined)
    .filter((other) => other.fuel!.premix === drained.premix)
    .filter((other) => blendRow(other.fuel!.blend).ethanolPct >= blendRow(drained.blend).ethanolPct)
    .filter((other) => from <= other.season.lastUse || to >= other.season.firstUse)
    .map((other) => other.name);
}
