/** Batteries that drive electric machines. */
export { DRIVE_CHEMISTRIES } from './chemistries.ts';
export { planDriveBattery } from './plan.ts';
