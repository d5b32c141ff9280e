import type { Method } from './method.ts';

/** Steps, strip-down, sessions and supplies. */
export const WORK_METHODS: readonly Method[] = [
  {
    key: 'work.ledger',
    title: 'start-up sheet',
    equation:
      'every item a step opens is closed by one start-up step; stages in safe order; a plan that does not close does not build',
    symbols: [],
    sources: ['common practice for the order of the stages'],
    weaknesses: ['Knows what the plan opened, not what somebody opened without it.'],
  },
  {
    key: 'work.strip',
    title: 'strip-down order',
    equation:
      'union of what the jobs need off, in an order in which nothing comes off before what covers it; refit in exactly the reverse',
    symbols: ['minutes'],
    sources: ['topological sorting: A. B. Kahn, Communications of the ACM 5 (1962) 558–562'],
    weaknesses: ['Minutes are the content file’s, and a seized bolt is not among them.'],
  },
  {
    key: 'work.sessions',
    title: 'sessions',
    equation:
      'fewest sessions in which no latest date is missed: serial scheme over priority orders, then exchange; start-ups in the last days before first use that have hours for twice their work',
    symbols: ['hours, h', 'dates'],
    sources: [
      'R. Kolisch, European Journal of Operational Research 90 (1996) 320–333',
      'V. Valls, F. Ballestín, S. Quintanilla, European Journal of Operational Research 165 (2005) 375–386',
    ],
    weaknesses: ['Best possible on small cases; on large ones near it, without proof.'],
  },
  {
    key: 'work.supplies',
    title: 'order-by dates',
    equation: 'order by = day of the session − lead time; amounts summed over machines',
    symbols: ['days'],
    sources: ['lead times from the content files'],
    weaknesses: ['A lead time is a promise of a shop.'],
  },
  {
    key: 'work.torque',
    title: 'torques',
    equation: '1 lbf·ft = 1.3558 N·m; never corrected for lubrication',
    symbols: ['N·m', 'lbf·ft'],
    sources: ['exact by definition of pound, foot and standard gravity'],
    weaknesses: ['Where nothing is published the sheet says so.'],
  },
];
