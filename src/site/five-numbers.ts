/** The five numbers of a machine, as the household of this site reads them. */
import type { MachinePlan } from '../planner/season-plan.ts';
import { format } from './format.ts';
import { type BigNumber, fiveNumbersOf } from './numbers.ts';

/** The five numbers; always five, whatever the machine lacks. */
export const fiveNumbers = (m: MachinePlan): BigNumber[] => fiveNumbersOf(m, format);
