import type { Enclosure } from './types.ts';

function within(value: number, low: number, high: number, what: string, unit: string): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${what}: ${value} ${unit} found, ${low} to ${high} ${unit} expected`);
  }
}

/**
 * Refuses an enclosure that cannot be one.
 * @param enclosure - a row of the table or the user's own
 */
export function checkEnclosure(enclosure: Enclosure): void {
  const { id } = enclosure;
  within(enclosure.timeConstantH, 0, 1000, `${id}: time constant`, 'h');
  within(enclosure.houseCoupling, 0, 1, `${id}: share of the house`, '');
  within(enclosure.houseC, -10, 35, `${id}: house temperature`, '°C');
  within(enclosure.gainK, -20, 40, `${id}: gain`, 'K');
  within(enclosure.airChangesPerH, 0.001, 1000, `${id}: air changes`, '1/h');
  if (enclosure.setpointC !== undefined) within(enclosure.setpointC, -30, 35, `${id}: set point`, '°C');
  if (enclosure.dampFloorPa !== undefined) within(enclosure.dampFloorPa, 0, 2000, `${id}: damp floor`, 'Pa');
  if (enclosure.maxRhPct !== undefined) within(enclosure.maxRhPct, 5, 100, `${id}: highest relative humidity`, '%');
}
