export type { CoolantInput } from './case.ts';
export { MARGIN_K } from './derivations.ts';
export { GLYCOLS, glycolRow } from './glycols.ts';
export { planCoolant } from './plan.ts';
export { drainAndReplace, freezingPointC, reachOfOneSwap, strengthFor, tableEnd } from './strength.ts';
