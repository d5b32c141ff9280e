/** The words of some fields, apart from the schemas so that a page can have them without the validation library. */

export const KINDS = [
  'motorcycle',
  'scooter',
  'snow-machine',
  'quad',
  'side-by-side',
  'car',
  'tractor',
  'mower',
] as const;
export const CHEMISTRY_NAMES = ['flooded', 'flooded-antimony', 'flooded-calcium', 'agm', 'gel', 'lifepo4'] as const;
export const DRIVE_CHEMISTRIES = ['lithium-ion', 'lead-acid'] as const;

/** Kinds of which it is asked whether their roads are salted. */
export const ROAD_KINDS: readonly string[] = ['motorcycle', 'scooter', 'car'];
