import type { Assembly, FuelChoice, Machine } from '../household.ts';
import { SHORT_REST_DAYS } from '../rest-length.ts';
import { KEEPING, type verdictOn } from './age.ts';
import { blendRow } from './blends.ts';

/** What drain, fill or leave is decided from. */
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
  /** Verdict at first use on petrol that is bought on the last day of use and not treated. */
  untreated: ReturnType<typeof verdictOn>;
  /** It is emptied through its tap, or small enough for a siphon and a few cans. */
  drainable: boolean;
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
/** Petrol without stabiliser is surely stale after three months; mixture that can be used up now is not kept for longer. */
const UNTREATED_D = 3 * MONTH_D;
/** A tank without a tap that is larger than this is not emptied at home: more than a few cans, siphoned. Common practice. */
const SIPHONED_L = 25;

const PRACTICE = 'common practice';
const UNTREATED_KEEPS = 'untreated petrol keeps 1–3 months in a vented tank';

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
    choice: 'leave',
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
    applies: (f) => f.bareSteel && (f.stabiliser || f.untreated !== 'dispose'),
    choice: 'fill',
    reason: (f) =>
      f.stabiliser
        ? 'A bare steel tank rusts when it stands empty: fill and stabilise.'
        : `A bare steel tank rusts when it stands empty: fill with fresh petrol${f.untreated === 'use' ? ', which lasts this rest' : '; it can be used mixed at first use'}.`,
    source: PRACTICE,
  },
  {
    id: 'injection',
    applies: (f) => f.delivery === 'injection' && (f.stabiliser || f.untreated === 'use'),
    choice: 'fill',
    reason: (f) =>
      f.stabiliser
        ? 'Injection: pump and injectors keep best wet with treated fuel, so fill and stabilise.'
        : 'Injection: pump and injectors keep best wet, and fresh petrol lasts this rest, so fill.',
    source: PRACTICE,
  },
  {
    id: 'no-stabiliser',
    applies: (f) => !f.stabiliser && f.untreated === 'dispose' && f.drainable,
    choice: 'drain',
    reason: (f) =>
      `No stabiliser at hand, and untreated petrol does not last this rest: tank and bowls are drained while it can still be used up${
        f.bareSteel ? ', and the bare steel is oiled inside' : ''
      }.`,
    source: UNTREATED_KEEPS,
  },
  {
    id: 'leave-low',
    applies: (f) => !f.stabiliser && f.untreated !== 'use',
    choice: 'leave',
    reason: (f) =>
      `No stabiliser at hand, and untreated petrol does not last this rest: nothing is filled in, and the last rides use the tank down. ${
        f.untreated === 'mix'
          ? 'What is left can be used at first use under two parts fresh petrol.'
          : 'What a full tank held would only be thrown away.'
      }${f.bareSteel ? ' The price: bare steel above the petrol can rust; a full tank with stabiliser would keep it.' : ''}`,
    source: UNTREATED_KEEPS,
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
 * Drain, fill or leave, by the first rule that applies.
 * @param facts - what it is decided from
 * @returns the choice and its reason in a sentence
 */
export function adviseChoice(facts: ChoiceFacts): { id: string; choice: FuelChoice; reason: string; source: string } {
  const rule = CHOICE_RULES.find((r) => r.applies(facts))!;
  return { id: rule.id, choice: rule.choice, reason: rule.reason(facts), source: rule.source };
}

/**
 * The facts of a machine.
 * @param machine - with fuel
 * @param rest - its length, whether stabiliser is at hand, and what becomes of fresh petrol without it
 */
export function choiceFacts(
  machine: Machine,
  rest: Pick<ChoiceFacts, 'restDays' | 'stabiliser' | 'untreated'>,
): ChoiceFacts {
  const fuel = machine.fuel!;
  return {
    delivery: fuel.delivery,
    bareSteel: fuel.tankMaterial === 'steel' && !fuel.lined,
    ethanolPct: blendRow(fuel.blend).ethanolPct,
    premix: fuel.premix,
    tankJob: jobThatOpensFuel(machine),
    // An injected engine's pump stands in the petrol and is not run dry.
    drainable: fuel.delivery === 'carburettor' && ((fuel.taps?.count ?? 0) > 0 || fuel.tankL <= SIPHONED_L),
    ...rest,
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
