export { type PartRow, partRows, USUAL_LEAD_DAYS, unitOf } from './parts.ts';
export { isOn, openJobs, planStrip } from './plan-strip.ts';
export { type StripNames, type StripProblem, stripProblems } from './problems.ts';
export { jobStepId, offStepId, onStepId } from './step-ids.ts';
export { orderedParts, refitSteps, winterSteps } from './steps.ts';
