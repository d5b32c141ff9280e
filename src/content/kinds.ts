/** The words of two fields, apart from the schemas so that a page can have them without the validation library. */

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
