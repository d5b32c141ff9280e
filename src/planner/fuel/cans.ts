/**
 * Cans of one size for a volume; a can is full at its marked volume.
 * @param litres - what is to be kept [L]
 * @param canL - room in one can [L]
 */
export function cansFor(litres: number, canL: number): number {
  if (!(litres >= 0 && canL > 0))
    throw new RangeError(
      `cans: found ${litres} L into cans of ${canL} L, expected litres of 0 or more and a can over 0 L`,
    );
  return Math.max(0, Math.ceil(litres / canL - 1e-9));
}
