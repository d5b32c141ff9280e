/** Step that takes an assembly off. */
export const offStepId = (assembly: string) => `strip.off.${assembly}`;
/** Step that refits it. */
export const onStepId = (assembly: string) => `strip.on.${assembly}`;
/** Start-up step that verifies a refit made in winter. */
export const checkStepId = (assembly: string) => `strip.check.${assembly}`;
/** Step that does a job. */
export const jobStepId = (job: string) => `job.${job}`;
/** Step that orders the parts of a group of jobs. */
export const orderStepId = (group: string) => `strip.order.${group}`;
/** Ledger item of an assembly that is off. */
export const assemblyItem = (assembly: string) => `assembly:${assembly}`;
