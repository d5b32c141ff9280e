import type { CoolantPlan } from '../season-plan.ts';
import { writtenDate } from '../written.ts';
import { type CoolantCase, type CoolantDraft, coldText, type Note, wantedText, writeDown } from './case.ts';
import { testDerivation } from './derivations.ts';
import { type Due, FROST_C } from './due.ts';

/**
 * Coolant of which nobody knows what it stands: a test in time, as long as frost is to come.
 * @param c - the case
 */
export function unknownStrength(c: CoolantCase): CoolantDraft {
  const { machine, rest, due, cold, q } = c;
  const wanted = wantedText(c);
  const draft = (text: string, notes: Note[] = [], more: Partial<CoolantPlan> = {}): CoolantDraft => ({
    plan: { enough: null, derivations: [], ...more, text: `${text} ${wanted}` },
    notes,
  });
  if (c.isFrostFree)
    return draft(
      `Strength unknown. The store does not get below ${q(cold.storeC, '°C')} during the rest, so nothing freezes; test it at the next service.`,
      [],
      { enough: true },
    );
  if (due === undefined) return draft('Strength unknown, and the frost of this rest is over: test it before the next.');
  if (c.tested)
    return draft(
      'Tested, and what the tester showed is not written down.',
      [
        {
          level: 'warning',
          text: `The coolant is ticked as tested, what it showed is not written down, and ${coldText(c)}.`,
          act: `${writeDown(machine)} The plan then says whether it is enough.`,
        },
      ],
      { unwritten: 'tested' },
    );
  return draft(testText(c, due), [testNote(c, due)], {
    testBy: due.by,
    derivations: [testDerivation(rest.firstFrost, cold.heaterFailsC ?? cold.storeC, due.by)],
  });
}

function testText({ household, cold, q }: CoolantCase, { by, isPast, canFreeze }: Due): string {
  const frost = q(FROST_C, '°C');
  if (isPast)
    return `Strength unknown: test it with a refractometer now${canFreeze ? `, the store can reach ${frost}` : ''}.`;
  const before = cold.heaterFailsC === undefined ? `, before the store can reach ${frost}` : '';
  return `Strength unknown: test it with a refractometer by ${writtenDate(by, household.locale)}${before}.`;
}

function testNote(c: CoolantCase, { by, isPast, canFreeze }: Due): Note {
  const when = isPast
    ? `now${canFreeze ? ': the store can freeze already' : ''}`
    : `by ${writtenDate(by, c.household.locale)}`;
  const isGuessed = c.machine.assumptions.some(({ target }) => target === 'cooling.kind');
  return {
    level: canFreeze ? 'danger' : 'warning',
    text: `Nobody knows whether the coolant freezes, and ${coldText(c)}.`,
    act: `Test it ${when}; plain water cracks the block from ${c.q(FROST_C, '°C')} down.${isGuessed ? ' Has it no radiator, say so: "Cooled by" in the form.' : ''}`,
  };
}
