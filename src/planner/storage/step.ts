import { exp } from '../elementary.ts';

/** Weights of one hour's step of a first-order body: next = keep·own + before·input before + now·input now. */
export interface StepWeights {
  keep: number;
  before: number;
  now: number;
}

/**
 * The exact hour of a body that follows its surroundings as dT/dt = (Te − T)/τ while these change straight from one
 * hourly value to the next.
 * @param timeConstantH - τ; 0 = follows at once [h]
 * @returns weights, which sum to 1
 * Source: solution of the first-order equation for a linear input: T' = Te' − rτ + (T − Te + rτ)·e^(−1/τ), r = Te' − Te.
 *   An input held at the hour's last value would run half an hour early and halve the lag of an engine in warming air.
 * Error: none for such an input.
 */
export function stepWeights(timeConstantH: number): StepWeights {
  if (!(timeConstantH >= 0)) throw new RangeError(`time constant: ${timeConstantH} h found, 0 or more expected`);
  if (timeConstantH === 0) return { keep: 0, before: 0, now: 1 };
  const keep = exp(-1 / timeConstantH);
  const lag = timeConstantH * (1 - keep);
  return { keep, before: lag - keep, now: 1 - lag };
}
