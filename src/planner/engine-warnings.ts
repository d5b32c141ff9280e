/** An engine that nobody named: oil and petrol of the wrong kind ruin it. */
import type { Machine } from './household.ts';
import type { Warning } from './season-plan.ts';

/** Where to say which engine it is. */
const SAY = 'answer “What engine has it?” in the form, engine.cycle and engine.twoStrokeOil in the machine’s file.';

/**
 * What to make sure of before oil and petrol are touched, where kinds of engine that are usual want different ones.
 * @param machine - with what was assumed of it
 * @returns one warning where the working cycle, or how a two-stroke gets its oil, is assumed and could be otherwise
 * Source: common practice.
 */
export function engineWarnings({ id, engine, assumptions }: Pick<Machine, 'id' | 'engine' | 'assumptions'>): Warning[] {
  const isOpen = (target: string) => assumptions.some((a) => a.target === target && a.low !== a.high);
  const warning = { machine: id, level: 'warning', about: 'engine' } as const;
  if (engine.cycle === 'four-stroke' && isOpen('engine.cycle'))
    return [
      {
        ...warning,
        text: 'Taken for a four-stroke: nobody said which engine it has.',
        act: `Make sure before oil and petrol are touched: a two-stroke has no engine oil to drain, and many need oil mixed into all their petrol. To say it, ${SAY}`,
      },
    ];
  if (engine.cycle === 'two-stroke' && (isOpen('engine.cycle') || isOpen('engine.twoStrokeOil')))
    return [
      {
        ...warning,
        text:
          engine.twoStrokeOil === 'injected'
            ? 'Taken for a two-stroke with an oil tank of its own: nobody said so.'
            : 'Taken for a two-stroke that runs on petrol with oil mixed in: nobody said so.',
        act: `Make sure before oil and petrol are touched: without oil from either way a two-stroke seizes, and a four-stroke wants its own oil changed. To say it, ${SAY}`,
      },
    ];
  return [];
}
