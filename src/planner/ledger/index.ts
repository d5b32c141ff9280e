/** The open-items ledger: what the steps leave open, what closes it, and in which order. */
export { buildLedger, type Ledger } from './build.ts';
export { ledgerProblems } from './library-check.ts';
export type { LedgerProblem } from './problem.ts';
export { itemId, settleSteps } from './settle.ts';
export { STAGES, startUpOrder } from './start-up.ts';
