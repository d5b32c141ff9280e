import type { FigureLanguage, RingMachine } from '../../figures/index.ts';
import type { MachinePlan, SeasonPlan } from '../../planner/season-plan.ts';
import type { PlanWith } from '../../publish/plan-file.ts';
import { type Format, formatOf } from '../formats.ts';
import { languageOf } from '../language.ts';
import { methodAt } from '../links.ts';
import { type Fold, unfolded } from './fold.ts';

/** What every part of a shown plan is made from. */
export interface Showing {
  plan: PlanWith<RingMachine>;
  machine: MachinePlan;
  format: Format;
  say: FigureLanguage;
  /** Name of a calculation, and where it is explained. */
  method: (key: string) => { title: string; link: string };
  /** How something is put away under its title. */
  fold: Fold;
  /** The reader answers a form and has no files. */
  form: boolean;
}

/** Names of the calculations by key. */
export type MethodTitles = Readonly<Record<string, string>>;

/**
 * What the parts of a machine's plan are made from.
 * @param plan - of the household
 * @param machine - of the plan
 * @param methods - names of the calculations
 * @param fold - in full, where nothing is said
 * @param form - whether the reader answers a form and has no files
 */
export function showingOf(
  plan: PlanWith<RingMachine>,
  machine: MachinePlan,
  methods: MethodTitles,
  fold: Fold = unfolded,
  form = false,
): Showing {
  const { format, say } = mannerOf(plan);
  // A derivation's key is a method's own, or begins with it.
  const row = (key: string) =>
    Object.keys(methods)
      .filter((own) => key === own || key.startsWith(`${own}.`))
      .sort((a, b) => b.length - a.length)[0] ?? key;
  const method = (key: string) => ({ title: methods[row(key)] ?? key, link: methodAt(row(key)) });
  return { plan, machine, format, say, method, fold, form };
}

/** Making a household's formats costs a tenth of a frame: the last ones are kept. */
let kept: { key: string; format: Format; say: FigureLanguage } | undefined;

function mannerOf({ household, units, asOf }: Pick<SeasonPlan, 'household' | 'units' | 'asOf'>): {
  format: Format;
  say: FigureLanguage;
} {
  const key = JSON.stringify([household.locale, household.clock, units, asOf]);
  if (kept?.key === key) return kept;
  const format = formatOf({ ...household, units, asOf });
  kept = { key, format, say: languageOf(format) };
  return kept;
}
