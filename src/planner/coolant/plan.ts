import { addMonths } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import type { CoolantPlan, Warning } from '../season-plan.ts';
import { inUnits } from '../units/index.ts';
import { writtenDate } from '../written.ts';
import { type CoolantInput, coolantCase, type Note } from './case.ts';
import { ageDerivations, aimDerivation, needDerivation } from './derivations.ts';
import { knownStrength } from './known.ts';
import { unknownStrength } from './unknown.ts';

/**
 * Plans the coolant of one machine over its rest.
 * @param input - machine, place, household, the cold of the rest and of what is left of it
 * @returns the plan and its warnings; undefined for a machine that has no coolant
 * Source: ASHRAE glycol tables; margin, least strength and age limits: common practice.
 */
export function planCoolant(input: CoolantInput): { plan: CoolantPlan; warnings: Warning[] } | undefined {
  const { machine } = input;
  if (machine.cooling.kind !== 'liquid') return undefined;
  const { coolant } = machine.cooling;
  const c = coolantCase(input);
  const ageDue = coolant?.lastChanged ? addMonths(coolant.lastChanged, Math.round(coolant.lifeYears * 12)) : undefined;
  const drafted = coolant?.strength === undefined ? unknownStrength(c) : knownStrength(c, coolant);
  const notes = [...drafted.notes, ...ageNotes(input, ageDue), ...coldUseNotes(input)];
  const plan: CoolantPlan = {
    ...c.base,
    ...drafted.plan,
    ageDue,
    derivations: [
      needDerivation(c.cold, c.needC),
      aimDerivation(c.needC, c.needed, c.aimed),
      ...drafted.plan.derivations,
      ...ageDerivations(coolant, ageDue),
    ].map((d) => (d.caveat === undefined ? d : { ...d, caveat: inUnits(d.caveat, input.household) })),
  };
  return { plan, warnings: notes.map((n) => ({ ...n, machine: machine.id, about: 'coolant' })) };
}

function ageNotes(input: CoolantInput, ageDue: IsoDate | undefined): Note[] {
  const { machine, household } = input;
  const seasonEnd = addMonths(machine.season.firstUse, 12);
  if (!machine.cooling.coolant) return [];
  if (ageDue === undefined) {
    return [
      {
        level: 'note',
        text: 'Nobody knows when the coolant was last changed; its rust inhibitor wears out by age.',
        act: 'Write the date down at the next change.',
      },
    ];
  }
  if (ageDue >= seasonEnd) return [];
  return [
    {
      level: 'note',
      text: `The coolant is due by age on ${writtenDate(ageDue, household.locale)}, before or during next season.`,
      act: 'Change it at this lay-up, so that fresh inhibitor stands in the block over the rest.',
    },
  ];
}

/** The cold of a rest says nothing of the season that the machine works in. */
function coldUseNotes(input: CoolantInput): Note[] {
  if (input.machine.use !== 'snow') return [];
  return [
    {
      level: 'note',
      text: 'This plan protects over the rest; in its season this machine meets colder.',
      act: 'Test the coolant against the coldest day of use at start-up.',
    },
  ];
}
