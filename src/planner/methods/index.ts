/** The register of calculations. Every key that a `Derivation` names stands here; a test holds it. */
import { BATTERY_METHODS } from './battery.ts';
import { FLUID_METHODS } from './fluids.ts';
import type { Method } from './method.ts';
import { STORE_METHODS } from './store.ts';
import { WORK_METHODS } from './work.ts';

export type { Method } from './method.ts';

export const METHODS: readonly Method[] = [...BATTERY_METHODS, ...STORE_METHODS, ...FLUID_METHODS, ...WORK_METHODS];
