import type { CoolantPlan, Derivation } from '../season-plan.ts';
import { writtenDate } from '../written.ts';
import { type CoolantCase, type CoolantDraft, coldText, type Note, percent, writeDown } from './case.ts';
import { type Coolant, freezeDerivation, LEAST_STRENGTH, MARGIN_K, swapDerivation } from './derivations.ts';
import { drainAndReplace, reachOfOneSwap, type Swap, tableEnd } from './strength.ts';

/** Up to here coolant stronger than the table's end protects at least as well as that end; from memory. */
const PLATEAU_TO = 0.65;

/**
 * Coolant of known strength: whether it protects, and what of it to replace where it does not.
 * @param c - the case
 * @param coolant - with its strength
 */
export function knownStrength(c: CoolantCase, coolant: Coolant): CoolantDraft {
  const { glycol, needC, needed } = c;
  const strength = coolant.strength!;
  const freezeC = c.freezeC!;
  if (strength > PLATEAU_TO) return beyondTable(strength, glycol);
  const freezing = freezeDerivation(coolant, freezeC);
  if (freezeC <= needC) return protectedDraft(c, strength, freezeC, freezing);
  const draft = (needed === undefined ? outOfReach : tooWeak)(c, coolant, freezeC, freezing);
  // Whoever wrote down the strongest there is has tested since.
  const isStrongest = strength >= tableEnd(glycol).strength;
  return c.strengthened && !isStrongest ? strengthenedDraft(c, draft, strength, freezeC) : draft;
}

/**
 * Ticked as strengthened, and still too weak by what is written down: its old strength, or one refill was too little. Only a test tells,
 * so that nothing is drained a second time before it.
 */
function strengthenedDraft(c: CoolantCase, { plan }: CoolantDraft, strength: number, freezeC: number): CoolantDraft {
  const { glycol, machine, needed, q } = c;
  const warmer =
    needed === undefined
      ? ` No mixture of ${glycol} glycol holds in the coldest to be reckoned with: only a warmer store does.`
      : '';
  return {
    plan: {
      ...plan,
      changeBy: undefined,
      unwritten: 'strengthened',
      text: `Ticked as strengthened. What is written down, ${q(freezeC, '°C')} (${percent(strength)}), is too weak still: test it again before more is drained.${warmer}`,
    },
    notes:
      c.due === undefined || c.isFrostFree
        ? []
        : [
            {
              level: 'warning',
              text: `The coolant is ticked as strengthened, and what is written down, ${q(freezeC, '°C')}, is too weak still: its old strength, or one refill was too little.${warmer}`,
              act: `Test it again before you drain more. ${writeDown(machine)}`,
            },
          ],
  };
}

function beyondTable(strength: number, glycol: string): CoolantDraft {
  return {
    plan: {
      strength,
      enough: null,
      text: `${percent(strength)} ${glycol} glycol is beyond what protects best (up to ${percent(PLATEAU_TO)}): stronger coolant freezes earlier again and cools worse. Thin it to about 50 % with water.`,
      derivations: [],
    },
    notes: [
      {
        level: 'warning',
        text: `Coolant of ${percent(strength)} glycol: its freezing point is not in the table.`,
        act: 'Thin it with distilled water to about 50 % and test it.',
      },
    ],
  };
}

function protectedDraft(
  { needC, q }: CoolantCase,
  strength: number,
  freezeC: number,
  freezing: Derivation,
): CoolantDraft {
  const isThin = strength < LEAST_STRENGTH;
  const thin = ' Its rust inhibitors want a third of glycol or more; half and half is usual.';
  return {
    plan: {
      strength,
      freezeC,
      replaceL: 0,
      swaps: 0,
      enough: true,
      text: `${percent(strength)} freezes at ${q(freezeC, '°C')}, ${q(needC, '°C')} is needed: protected from frost.${isThin ? thin : ''}`,
      derivations: [freezing],
    },
    notes: isThin
      ? [
          {
            level: 'note',
            text: `The coolant holds ${percent(strength)} glycol: it does not freeze here, but below about a third its rust inhibitors do not protect.`,
            act: 'Bring it to a third or more at the next change; half and half is usual.',
          },
        ]
      : [],
  };
}

/** What of it to replace to come to the strength aimed at. */
function refill(c: CoolantCase, coolant: Coolant): { how: string; plan: Partial<CoolantPlan>; derivation: Derivation } {
  const { aimed, q } = c;
  const { volumeL, refillStrength } = coolant;
  const drainableL = Math.min(volumeL, coolant.drainableL);
  const strength = coolant.strength!;
  const swap = drainAndReplace(volumeL, drainableL, strength, aimed, refillStrength);
  const reach = reachOfOneSwap(volumeL, drainableL, strength, Math.max(strength, refillStrength));
  const oneSwapRefill = strength + ((aimed - strength) * volumeL) / drainableL;
  const how = swap
    ? swapText(swap, refillStrength, q)
    : `A refill of ${percent(refillStrength)} cannot get there${
        refillStrength > strength ? ` (one draining reaches ${percent(reach)})` : ''
      }: ${
        oneSwapRefill <= 1
          ? `drain ${q(drainableL, 'L')} and refill with ${percent(oneSwapRefill)} or stronger.`
          : 'empty and flush the system, and fill it with the right mixture.'
      }`;
  return {
    how,
    plan: { replaceL: swap?.totalL, swaps: swap?.swaps },
    derivation: swapDerivation(coolant, aimed, reach, swap),
  };
}

function outOfReach(c: CoolantCase, coolant: Coolant, freezeC: number, freezing: Derivation): CoolantDraft {
  const { glycol, needC, due, q } = c;
  const strength = coolant.strength!;
  const end = tableEnd(glycol);
  const isStrongest = strength >= end.strength;
  const { how, plan, derivation } = refill(c, coolant);
  const head = `No mixture of ${glycol} glycol reaches ${q(needC, '°C')}; ${percent(end.strength)}, the strongest of the table, freezes at ${q(end.freezeC, '°C')}.`;
  const act = isStrongest
    ? 'It is as strong as helps: store the machine warmer.'
    : `Bring it to ${percent(end.strength)}, or store the machine warmer. ${how}`;
  return {
    plan: {
      ...(isStrongest ? {} : { ...plan, changeBy: due?.by }),
      strength,
      freezeC,
      enough: false,
      text: `${head} ${act}`,
      derivations: isStrongest ? [freezing] : [freezing, derivation],
    },
    notes: due
      ? [
          {
            level: 'danger',
            text: `The store can reach colder than any mixture of ${glycol} glycol protects with ${q(MARGIN_K, 'K')} to spare.`,
            act,
          },
        ]
      : [],
  };
}

function tooWeak(c: CoolantCase, coolant: Coolant, freezeC: number, freezing: Derivation): CoolantDraft {
  const { needC, needed, aimed, q } = c;
  const strength = coolant.strength!;
  const { how, plan, derivation } = refill(c, coolant);
  const aim =
    aimed > needed! ? `; a third (${percent(aimed)}) is aimed at, for its rust inhibitors` : ` (${percent(aimed)})`;
  return {
    plan: {
      ...plan,
      strength,
      freezeC,
      enough: false,
      changeBy: c.due?.by,
      text: `${percent(strength)} freezes at ${q(freezeC, '°C')}, ${q(needC, '°C')} is needed${aim}. ${how}`,
      derivations: [freezing, derivation],
    },
    notes: weakNotes(c, freezeC, how),
  };
}

/** What is still to be done about coolant that freezes, as long as it can. */
function weakNotes(c: CoolantCase, freezeC: number, how: string): Note[] {
  const { household, due, cold, q } = c;
  const weak = `The coolant freezes at ${q(freezeC, '°C')}; ${coldText(c)}.`;
  if (c.isFrostFree) return [{ level: 'note', text: weak, act: how }];
  if (due === undefined) return [];
  const holdsInStore = cold.heaterFailsC !== undefined && freezeC < cold.storeC;
  const when = due.isPast ? 'now' : `by ${writtenDate(due.by, household.locale)}`;
  return [
    {
      level: holdsInStore ? 'warning' : 'danger',
      text: weak,
      act: `Strengthen it ${when}. ${how}`,
    },
  ];
}

function swapText(swap: Swap, refill: number, q: (value: number, unit: string) => string): string {
  const strength = percent(refill);
  if (swap.swaps === 1) return `Drain ${q(swap.totalL, 'L')} and refill with ${strength}.`;
  const each = swap.each.map((litres) => q(litres, 'L')).join(', then ');
  return `One draining is not enough: drain and refill with ${strength} ${swap.swaps} times (${each}), running the engine warm in between.`;
}
