export { GLYCOLS, glycolRow } from './glycols.ts';
export { type CoolantInput, MARGIN_K, planCoolant } from './plan.ts';
export { drainAndReplace, freezingPointC, reachOfOneSwap, strengthFor, tableEnd } from './strength.ts';
