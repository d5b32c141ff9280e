/** Latitude and longitude as people write them where content asks for [latitude, longitude] in degrees. */
import type { Path } from './path.ts';

const NUMBER = String.raw`[-−–]?\d{1,3}(?:[.,]\d+)?`;
const DEGREES =
  /^([-−–]?\d{1,3})\s*°\s*(?:(\d{1,2}(?:\.\d+)?)\s*['′’]\s*(?:(\d{1,2}(?:\.\d+)?)\s*["″”]\s*)?)?([NSEW])?$/i;

/** Places of a ten-thousandth of a degree are a stone's throw apart. */
const DECIMALS = 4;

/**
 * The number that degrees, minutes and seconds make.
 * @param text - "54°30'N", "3° 6′ 12″ W"
 */
export function degreesIn(text: string): string | undefined {
  const [, degrees, minutes = '0', seconds = '0', side = ''] = DEGREES.exec(text.trim()) ?? [];
  if (degrees === undefined) return undefined;
  const whole = Number(degrees.replace(/[−–]/, '-'));
  const size = Math.abs(whole) + Number(minutes) / 60 + Number(seconds) / 3600;
  const isNegative = degrees.startsWith('-') || /[−–]/.test(degrees) || /[SW]/i.test(side);
  return String(Number(`${isNegative ? '-' : ''}${size.toFixed(DECIMALS)}`));
}

/** The pair that was meant by text, by a list of figures that decimal commas cut, or by a group of them. */
function pairIn(input: unknown): [string, string] | undefined {
  if (Array.isArray(input)) {
    const [a, b, c, d] = input.map(String);
    if (input.length === 4 && input.every(Number.isInteger) && Number(b) >= 0 && Number(d) >= 0)
      return [`${a}.${b}`, `${c}.${d}`];
    return input.length === 2 ? pairOf(a!, b!) : undefined;
  }
  if (typeof input === 'object' && input !== null) {
    const [latitude, longitude] = ['lat', 'lon'].map((name) =>
      Object.entries(input).find(([key]) => key.toLowerCase().startsWith(name)),
    );
    return latitude && longitude ? pairOf(String(latitude[1]), String(longitude[1])) : undefined;
  }
  const text = String(input)
    .replace(/^\s*near\s*:?\s*/i, '')
    .replace(/[[\]()]/g, '')
    .trim();
  const side = String.raw`\s*(?:°\s*)?[NSEW]?`;
  const [, first, second] =
    new RegExp(`^(${NUMBER}${side})(?:\\s*[,;]\\s+|\\s*;\\s*|\\s+)(${NUMBER}${side})$`, 'i').exec(text) ??
    /^([^,;]+)[,;]([^,;]+)$/.exec(text) ??
    [];
  return first === undefined ? undefined : pairOf(first, second!);
}

function pairOf(first: string, second: string): [string, string] | undefined {
  const pair = [first, second].map((text) => {
    const plain = text.trim().replace(/(?<=\d),(?=\d)/, '.');
    const [, number, side = ''] = new RegExp(`^(${NUMBER})\\s*(?:°\\s*)?([NSEW])?$`, 'i').exec(plain) ?? [];
    if (number === undefined) return degreesIn(plain);
    const bare = number.replace(/^[−–]/, '-');
    return /[SW]/i.test(side) && !bare.startsWith('-') ? `-${bare}` : bare;
  });
  const [latitude, longitude] = pair;
  if (latitude === undefined || longitude === undefined) return undefined;
  return Math.abs(Number(latitude)) <= 90 && Math.abs(Number(longitude)) <= 180 ? [latitude, longitude] : undefined;
}

/**
 * What to write where a place's climate is given by coordinates in another form than content takes.
 * @param path - of what was found
 */
export function coordinatesFix(path: Path, input: unknown): string | undefined {
  const at = path.join('.');
  if (at !== 'climate' && at !== 'climate.near') return undefined;
  const pair = pairIn(input);
  if (pair === undefined) return undefined;
  const near = `near: [${pair.join(', ')}]`;
  return at === 'climate' ? `Write climate: { ${near} }.` : `Write ${near}.`;
}
