import type { FigureLanguage } from '../../../figures/index.ts';
import type { MachinePlan, SeasonPlan } from '../../../planner/season-plan.ts';
import type { Format } from '../../../site/formats.ts';

/** What every part of a shown plan is made from. */
export interface Showing {
  plan: SeasonPlan;
  machine: MachinePlan;
  format: Format;
  say: FigureLanguage;
  /** Between two frames of the slider: tables under pictures, reasons and sheets are left for later. */
  quick: boolean;
  methodTitle: (method: string) => string;
}
