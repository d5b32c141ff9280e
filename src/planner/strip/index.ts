export { type PartRow, partRows, USUAL_LEAD_DAYS, unitOf } from './parts.ts';
export { openJobs, planStrip } from './plan-strip.ts';
export { type StripProblem, stripProblems } from './problems.ts';
export { offStepId } from './step-ids.ts';
export { refitSteps, winterSteps } from './steps.ts';
