/** The words of the planner page, a module, so that page and worker each carry only those that they say. */
export * as PLANNER from './english.ts';
