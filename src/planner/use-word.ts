import type { MachineKind } from './household.ts';

const WORDS: Partial<Record<MachineKind, 'drive' | 'use'>> = {
  car: 'drive',
  'side-by-side': 'drive',
  tractor: 'use',
  mower: 'use',
};

/** What is done with a machine of a kind: "ride", "drive" or "use". */
export const useWord = (kind: MachineKind): 'ride' | 'drive' | 'use' => WORDS[kind] ?? 'ride';
