/** The two days of a season, held against each other. */
import { daysBetween } from '../planner/dates.ts';
import type { Say, Sound } from './cross-answers.ts';

/** Shortest and longest rest that is planned [d]. */
const REST_DAYS = { min: 7, max: 1096 };

/** Problems of a rest that is none, too short or too long. */
export function seasonProblems({ lastUse, firstUse }: Sound, say: Say): void {
  if (lastUse === undefined || firstUse === undefined) return;
  const days = daysBetween(lastUse, firstUse);
  if (days <= 0) {
    say(
      ['firstUse'],
      `found ${firstUse}, which is not after the last use ${lastUse}, expected a later day`,
      'Swap the two dates, or correct the year: lastUse ends the season, firstUse begins the next.',
    );
  } else if (days < REST_DAYS.min) {
    say(
      ['firstUse'],
      `found a rest of ${days} days, expected at least ${REST_DAYS.min}`,
      'A shorter rest needs no lay-up; correct the dates.',
    );
  } else if (days > REST_DAYS.max) {
    say(['firstUse'], `found a rest of ${days} days, expected at most three years`, 'Correct the year.');
  }
}
