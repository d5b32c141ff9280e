/** Asks on the terminal, one question a line; what an option answered beforehand is not asked. */
import { createInterface } from 'node:readline';
import { checkField } from '../../content/check.ts';
import { stop } from '../paths.ts';
import type { Question } from './questions.ts';

type Schema = Parameters<typeof checkField>[0];
export type Answers<Q extends readonly Question[]> = Partial<Record<Q[number]['key'], string | undefined>>;

export interface Round<Q extends readonly Question[]> {
  schema: Schema;
  /** Whether a question is asked, by the answers so far. */
  asks?: (key: Q[number]['key'], answers: Answers<Q>) => boolean;
  /** What may be answered, where that is known from the folder. */
  choices?: Partial<Record<Q[number]['key'], readonly string[]>>;
  /** What no field alone can know. */
  wrong?: (key: Q[number]['key'], answer: string, answers: Answers<Q>) => string | undefined;
}

/**
 * Makes the function that asks.
 * @param given - answers by option
 * @returns asks some questions in their order; and ends the reading from the terminal
 */
export function asker(given: Readonly<Record<string, unknown>>) {
  const lines = createInterface({ input: process.stdin });
  const typed = lines[Symbol.asyncIterator]();

  async function ask<const Q extends readonly Question[]>(questions: Q, round: Round<Q>): Promise<Answers<Q>> {
    const answers: Answers<Q> = {};
    for (const question of questions as readonly (Question & { key: Q[number]['key'] })[]) {
      if (round.asks && !round.asks(question.key, answers)) continue;
      answers[question.key] = await answer(question, (text) => wrongWith(question, text, round, answers), round);
    }
    return answers;
  }

  async function answer<Q extends readonly Question[]>(
    question: Question & { key: Q[number]['key'] },
    wrongWith: (answer: string) => string | undefined,
    { choices }: Round<Q>,
  ): Promise<string | undefined> {
    const option = given[question.key];
    if (typeof option === 'string') {
      const wrong = wrongWith(option);
      return wrong ? stop(`--${question.key}: ${wrong}`) : option;
    }
    const some = choices?.[question.key];
    const hint = some && !question.text.includes(some[0]!) ? ` ${some.join(', ')}` : '';
    const enter = question.needed ? '' : ` (Enter: ${question.otherwise ?? 'leave out'})`;
    console.log(`${question.text}${hint}${enter}`);
    for (;;) {
      process.stdout.write('> ');
      const next = await typed.next();
      const text = next.done ? '' : next.value.trim();
      if (text === '' && !question.needed) return question.otherwise;
      const wrong = text === '' ? 'found nothing, expected an answer.' : wrongWith(text);
      if (!wrong) return text;
      if (next.done) stop(`${question.key}: ${wrong}`);
      console.log(wrong);
    }
  }

  return { ask, close: () => lines.close() };
}

function wrongWith<Q extends readonly Question[]>(
  question: Question & { key: Q[number]['key'] },
  text: string,
  { schema, choices, wrong }: Round<Q>,
  answers: Answers<Q>,
): string | undefined {
  if (question.none && text === 'none') return undefined;
  const some = choices?.[question.key];
  if (some && !some.includes(text)) return `found "${text}", expected one of ${some.join(', ')}.`;
  return wrong?.(question.key, text, answers) ?? checkField(schema, [...question.path], question.read?.(text) ?? text);
}
