/** How the register's check values are put to the calculations: by name, numbers and words in, one number out. */
export const RUNNERS: Record<string, (...given: (number | string)[]) => number> = {};
