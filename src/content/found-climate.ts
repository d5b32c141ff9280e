import type { Climate } from '../planner/climate/index.ts';
import type { Place } from '../planner/household.ts';
import type { Problem } from './problem.ts';

/** A place's climate, or what is wrong with it. */
export interface Found {
  climate?: Climate | undefined;
  station?: Place['station'];
  problems: Problem[];
}
