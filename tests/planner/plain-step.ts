/** A step of a plan with nothing but what is given. */
import type { PlanStep } from '../../src/planner/season-plan.ts';

export const NO_NEEDS = { dryDay: false, warmEngine: false, stand: false, charger: false, bench: false, power: false };

export const plainStep = (id: string, over: Partial<PlanStep> = {}): PlanStep => ({
  id,
  phase: 'lay-up',
  part: 'Part',
  title: id,
  minutes: 30,
  tools: [],
  supplies: [],
  cautions: [],
  why: '',
  sources: [],
  amounts: [],
  opens: [],
  closes: [],
  after: [],
  safetyCritical: false,
  needs: NO_NEEDS,
  earliest: '2026-10-25',
  latest: '2026-11-15',
  waitH: 0,
  torques: [],
  done: false,
  ...over,
});
