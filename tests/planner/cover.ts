/** Two procedures that need nothing: a cover is put on at the lay-up and taken off at the start-up. */
import type { Procedure } from '../../src/planner/household.ts';
import { NO_NEEDS } from './plain-step.ts';

const step = { when: {}, covers: [], tools: [], supplies: [], cautions: [], why: '', source: '', waitH: 0 };
const common = { ...step, after: [], safetyCritical: false, sameSession: false, needs: NO_NEEDS };

/** One hour's work at the lay-up, which opens what the start-up closes again. */
export const COVER: Procedure[] = [
  {
    ...{ id: 'cover', title: 'Cover', phase: 'lay-up', order: 10, when: {}, file: 'procedures/cover.yaml', at: {} },
    steps: [
      {
        ...common,
        ...{ id: 'cover-on', title: 'Put the cover on', minutes: 60, closes: [] },
        opens: [{ item: 'cover', state: 'on', safetyCritical: false }],
      },
    ],
  },
  {
    ...{ id: 'uncover', title: 'Uncover', phase: 'start-up', order: 10, when: {}, file: 'procedures/off.yaml', at: {} },
    steps: [{ ...common, id: 'cover-off', title: 'Take the cover off', minutes: 5, opens: [], closes: ['cover'] }],
  },
];
