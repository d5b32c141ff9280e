/**
 * Exponential and logarithm that give the same bits everywhere.
 *
 * ECMAScript leaves Math.exp, Math.log and powers to the engine ("implementation-approximated", sec-math.exp), and engines
 * do differ in the last bit. Sums, products, quotients and Math.round are exact by IEEE 754, so that functions made of these
 * alone let the build, the page and every browser make the same plan, byte for byte.
 */

/** The upper bits of ln 2, few enough that a whole multiple of up to 2¹⁷ is exact; and the rest. */
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;

/** Steps to an octave in the table of powers. */
const STEPS = 64;
const STEP_HIGH = LN2_HIGH / STEPS;
const STEP_LOW = LN2_LOW / STEPS;
const PER_STEP = STEPS / Math.LN2;

/** Beyond these the result is no normal number. */
const HIGHEST = 709.782712893384;
const LOWEST = -708;

/** e^(j·ln 2/64), by the series. */
const POWERS: Float64Array = Float64Array.from({ length: STEPS }, (_, j) => {
  const [high, low] = [j * STEP_HIGH, j * STEP_LOW];
  let rest = 0;
  for (let n = 24; n > 1; n--) rest = (high / n) * (1 + rest);
  const power = 1 + (high + high * rest);
  return power + power * low;
});

const LEAST_EXPONENT = -1023;
/** Exact powers of two, from 2^LEAST_EXPONENT. */
const OCTAVES: Float64Array = (() => {
  const octaves = new Float64Array(2048);
  octaves[-LEAST_EXPONENT] = 1;
  for (let i = -LEAST_EXPONENT + 1; i < 2047; i++) octaves[i] = octaves[i - 1]! * 2;
  for (let i = -LEAST_EXPONENT - 1; i >= 0; i--) octaves[i] = octaves[i + 1]! / 2;
  return octaves;
})();

/**
 * e to a power.
 * @param x - any number
 * @returns e^x
 * Source: reduction to |r| ≤ ln 2/128 in two parts (Cody and Waite, Software Manual for the Elementary Functions, 1980, ch. 6),
 *   a table of 64 powers (Tang, ACM Transactions on Mathematical Software 15 (1989) 144), the series to r⁵.
 * Error: 2 units in the last place.
 */
export function exp(x: number): number {
  if (!(x >= LOWEST && x <= HIGHEST)) return outside(x);
  const k = Math.round(x * PER_STEP);
  const r = x - k * STEP_HIGH - k * STEP_LOW;
  const p = r + r * r * (0.5 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120))));
  const power = POWERS[k & (STEPS - 1)]!;
  return (power + power * p) * OCTAVES[(k >> 6) - LEAST_EXPONENT]!;
}

function outside(x: number): number {
  if (Number.isNaN(x)) return x;
  if (x > HIGHEST) return Number.POSITIVE_INFINITY;
  const half = x < 2 * LOWEST ? 0 : exp(x / 2);
  return half * half;
}

const DOUBLE = new DataView(new ArrayBuffer(8));

/**
 * The natural logarithm.
 * @param x - any number
 * @returns ln x; −∞ for 0, NaN below it
 * Source: x = m·2^e with m from √½ to √2, ln m by the series of artanh((m − 1)/(m + 1)).
 * Error: 2 units in the last place.
 */
export function log(x: number): number {
  if (!(x > 0 && x < Number.POSITIVE_INFINITY)) return x === 0 ? Number.NEGATIVE_INFINITY : x > 0 ? x : Number.NaN;
  if (x < 2.3e-308) return log(x * 2 ** 60) - 60 * Math.LN2;
  DOUBLE.setFloat64(0, x);
  const bits = DOUBLE.getUint32(0);
  let e = (bits >>> 20) - 1023;
  DOUBLE.setUint32(0, (bits & 0xfffff) | 0x3ff00000);
  let m = DOUBLE.getFloat64(0);
  if (m > Math.SQRT2) {
    m /= 2;
    e += 1;
  }
  const s = (m - 1) / (m + 1);
  const z = s * s;
  let rest = 0;
  for (let n = 23; n > 1; n -= 2) rest = z * (1 / n + rest);
  return e * LN2_HIGH + (2 * s + 2 * s * rest + e * LN2_LOW);
}

/**
 * A positive number to any power.
 * @param base - more than 0; 0 gives 0 to a positive power
 * @param exponent - any number
 * Error: units in the last place in the measure of |exponent·ln base|; none of it matters below 1e-13.
 */
export function power(base: number, exponent: number): number {
  return exp(exponent * log(base));
}
