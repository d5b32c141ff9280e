/** Words of what was done and measured, apart since the planner page says them too. */
export const SAID = {
  kinds: {
    readings: 'Reading',
    charged: 'Charge',
    done: 'Done',
    skipped: 'Left out',
    notes: 'Note',
    asLeft: 'Lies',
    finishedJobs: 'Job finished',
    odometer: 'Odometer',
    engineHours: 'Engine hours',
  },
  wholePhases: {
    'lay-up': 'All of the lay-up',
    'look-in': 'All of a look-in',
    'start-up': 'All of the start-up',
  } as Record<string, string>,
  restedFor: (hours: number) => `rested ${hours} h`,
  notANumber: 'Write a number, such as 2.5.',
  outside: (min: string, max: string) => `Write a number from ${min} to ${max}.`,
} as const;
