import type { Assembly, FuelChoice, Machine } from '../household.ts';
import { SHORT_REST_DAYS } from '../rest-length.ts';
import { KEEPING } from './age.ts';
import { blendRow } from './blends.ts';

/** What drain or fill is decided from. */
export interface ChoiceFacts {
  delivery: 'carburettor' | 'injection';
  /** Bare steel inside: rusts when it stands empty. */
  bareSteel: boolean;
  ethanolPct: number;
  premix: boolean;
  restDays: number;
  /** Name of a planned job that takes the tank off or opens the fuel; undefined when none does. */
  tankJob?: string | undefined;
  stabiliser: boolean;
}

interface ChoiceRule {
  id: string;
  applies: (facts: ChoiceFacts) => boolean;
  choice: FuelChoice;
  reason: (facts: ChoiceFacts) => string;
  source: string;
}

const MONTH_D = 30.4375;
/** Beyond the longest life of treated fuel it would be stale at first use whatever is done. */
const LONGEST_D = Math.max(...KEEPING.map((k) => k.months.high)) * MONTH_D;
/** Untreated fuel is surely good for a month and surely stale after three. */
const UNTREATED_D = 3 * MONTH_D;

const PRACTICE = 'common practice';

/** Rules in order: the first that applies decides. */
export const CHOICE_RULES: readonly ChoiceRule[] = [
  {
    id: 'tank-comes-off',
    applies: (f) => f.tankJob !== undefined,
    choice: 'drain',
    reason: (f) => `The tank comes off for "${f.tankJob}", so it is drained.`,
    source: PRACTICE,
  },
  {
    id: 'short-rest',
    applies: (f) => f.restDays < SHORT_REST_DAYS,
    choice: 'fill',
    reason: (f) => `The rest is ${f.restDays} days: short enough for the fuel to stay as it is.`,
    source: PRACTICE,
  },
  {
    id: 'longer-than-fuel-lives',
    applies: (f) => f.restDays > LONGEST_D,
    choice: 'drain',
    reason: (f) =>
      `The rest is ${Math.round(f.restDays / MONTH_D)} months: longer than treated fuel keeps, so it would only have to be disposed of.${
        f.bareSteel ? ' The bare steel tank is oiled or fogged inside and closed with a desiccant plug.' : ''
      }`,
    source: 'published lives of petrol, 1–12 months',
  },
  {
    id: 'high-ethanol-carburettor',
    applies: (f) => f.delivery === 'carburettor' && f.ethanolPct > 10,
    choice: 'drain',
    reason: (f) => `Fuel with ${f.ethanolPct} % ethanol is not left standing in a carburettor's tank and bowls.`,
    source: PRACTICE,
  },
  {
    id: 'bare-steel',
    applies: (f) => f.bareSteel,
    choice: 'fill',
    reason: (f) =>
      f.stabiliser
        ? 'A bare steel tank rusts when it stands empty: fill and stabilise.'
        : 'A bare steel tank rusts when it stands empty: fill, and get stabiliser before the last run.',
    source: PRACTICE,
  },
  {
    id: 'injection',
    applies: (f) => f.delivery === 'injection',
    choice: 'fill',
    reason: () => 'Injection: pump and injectors keep best wet with treated fuel, so fill and stabilise.',
    source: PRACTICE,
  },
  {
    id: 'no-stabiliser',
    applies: (f) => !f.stabiliser && f.restDays > UNTREATED_D,
    choice: 'drain',
    reason: () =>
      'No stabiliser at hand, the tank does not rust and untreated fuel does not last the rest: drain tank and bowls.',
    source: 'untreated petrol keeps 1–3 months in a vented tank',
  },
  {
    id: 'premix-plastic',
    applies: (f) => f.premix && f.restDays > UNTREATED_D,
    choice: 'drain',
    reason: () =>
      'Two-stroke mixture in a tank that does not rust: drained, since it can be used up now and is mixed fresh in minutes.',
    source: 'two-stroke mixture keeps as the petrol in it (two oil companies)',
  },
  {
    id: 'fill',
    applies: () => true,
    choice: 'fill',
    reason: (f) =>
      f.stabiliser
        ? 'Fill and stabilise: a full tank takes in least damp air, and there is nothing to keep in cans.'
        : 'Fill: the rest is no longer than fresh fuel keeps.',
    source: PRACTICE,
  },
];

/**
 * Drain or fill, by the first rule that applies.
 * @param facts - what it is decided from
 * @returns the choice and its reason in a sentence
 */
export function adviseChoice(facts: ChoiceFacts): { id: string; choice: FuelChoice; reason: string; source: string } {
  const rule = CHOICE_RULES.find((r) => r.applies(facts))!;
  return { id: rule.id, choice: rule.choice, reason: rule.reason(facts), source: rule.source };
}

/** The facts of a machine. */
export function choiceFacts(machine: Machine, restDays: number, stabiliser: boolean): ChoiceFacts {
  const fuel = machine.fuel!;
  return {
    delivery: fuel.delivery,
    bareSteel: fuel.tankMaterial === 'steel' && !fuel.lined,
    ethanolPct: blendRow(fuel.blend).ethanolPct,
    premix: fuel.premix,
    restDays,
    tankJob: jobThatOpensFuel(machine),
    stabiliser,
  };
}

/** Name of the first open job for which an assembly must come off that holds fuel. */
function jobThatOpensFuel(machine: Machine): string | undefined {
  const byId = new Map(machine.assemblies.map((a) => [a.id, a]));
  const open = machine.jobs.filter((job) => !job.done);
  return open.find((job) => reach(job.assemblies, byId).some(holdsFuel))?.name;
}

/** The assemblies named and all that must come off before them. */
function reach(ids: readonly string[], byId: ReadonlyMap<string, Assembly>): Assembly[] {
  const found = new Set<string>();
  const queue = [...ids];
  while (queue.length > 0) {
    const id = queue.pop()!;
    if (found.has(id)) continue;
    found.add(id);
    queue.push(...(byId.get(id)?.behind ?? []));
  }
  return [...found].flatMap((id) => byId.get(id) ?? []);
}

/** Oil, coolant and header tanks are tanks too, so a name counts only where no other fluid is meant. */
function holdsFuel(assembly: Assembly): boolean {
  if (assembly.opensFluid !== undefined) return assembly.opensFluid === 'fuel';
  const words = `${assembly.id} ${assembly.name}`;
  return /\b(fuel|petrol|gas)?[ -]?tank\b/i.test(words) && !/oil|coolant|header|expansion|washer/i.test(words);
}
