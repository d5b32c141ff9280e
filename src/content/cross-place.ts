/** What only shows when a place is held against the household's time zone: coordinates that lost a sign, or changed places. */
import { type Loaded, problemAt } from './loaded.ts';
import type { Problem } from './problem.ts';
import type { PlaceFile } from './schemas/place.ts';

type Pair = readonly [latitude: number, longitude: number];

/** No zone's standard time is further from its sun; that of western China is 2.9 h from it [h]. */
const FAR_FROM_SUN_H = 3.5;

/** Within so much nearly every place has the sun of its zone [h]. */
const NEAR_SUN_H = 2;

/**
 * Latitude and longitude that cannot be meant: far from the household's time zone, or on the other half of the earth, where a
 * sign or the order of the two puts them right. Where nothing puts them right, the place may well be abroad.
 * @param zone - IANA name; of one without a place, such as UTC, nothing is said
 * @param asOf - the day of the plan: zones change
 */
export function zoneProblems(
  { source, checked }: Pick<Loaded<PlaceFile>, 'source' | 'checked'>,
  zone: string | undefined,
  asOf: string,
): Problem[] {
  const climate = checked.sound.climate as PlaceFile['climate'] | undefined;
  if (typeof climate !== 'object' || !('near' in climate) || zone === undefined || !/^(?!Etc\/).+\//.test(zone))
    return [];
  const sun = sunOf(zone, Number(asOf.slice(0, 4)));
  const [latitude, longitude] = climate.near;
  const isIn = (pair: Pair) => hoursBetween(sun, pair) <= NEAR_SUN_H && !isOtherHalf(sun, pair);
  const turned: Pair = [longitude, latitude];
  const isTurned = Math.abs(longitude) <= 90 && isIn(turned) && !isIn(climate.near);
  const isFar = hoursBetween(sun, climate.near) > FAR_FROM_SUN_H;
  const signs: Pair[] = isFar ? [[latitude, -longitude]] : [];
  // A minus is forgotten; nobody writes one too many.
  if (latitude > 0) signs.push([-latitude, longitude], ...(isFar ? [[-latitude, -longitude] as const] : []));
  const meant =
    signs.find((pair) => (isFar || isOtherHalf(sun, climate.near)) && isIn(pair)) ?? (isTurned ? turned : undefined);
  if (meant === undefined) return [];
  const where = `${Math.abs(latitude)}° ${latitude < 0 ? 'south' : 'north'}, ${Math.abs(longitude)}° ${longitude < 0 ? 'west' : 'east'}`;
  return [
    problemAt(
      source,
      ['climate', 'near'],
      `found ${where}, which is not in the household's time zone ${zone}, expected latitude first, south and west negative`,
      `Write near: [${meant.join(', ')}]; if the place is abroad, write climate: { station: … } with the name of one near it.`,
    ),
  ];
}

/** What a zone's clock tells of where it is: its standard time [h], and the half of the earth, where it has summer time. */
interface Sun {
  offsetH: number;
  half: 'north' | 'south' | undefined;
}

function sunOf(zone: string, year: number): Sun {
  const [january, july] = [0, 6].map((month) => offsetH(zone, Date.UTC(year, month, 15, 12))) as [number, number];
  const half = january === july ? undefined : january < july ? 'north' : 'south';
  return { offsetH: Math.min(january, july), half };
}

/** How far a zone's clock is ahead of UTC at an instant [h]. */
function offsetH(zone: string, instant: number): number {
  const format = new Intl.DateTimeFormat('en', { timeZone: zone, timeZoneName: 'longOffset' });
  const name = format.formatToParts(instant).find(({ type }) => type === 'timeZoneName')!.value;
  const [, sign, hours = '0', minutes = '0'] = /([+-])(\d+):(\d+)/.exec(name) ?? [];
  return (sign === '-' ? -1 : 1) * (Number(hours) + Number(minutes) / 60);
}

/** Hours between a zone's clock and the sun of a place, the shorter way round. */
function hoursBetween({ offsetH }: Sun, [, longitude]: Pair): number {
  const apart = Math.abs(offsetH - longitude / 15) % 24;
  return Math.min(apart, 24 - apart);
}

const isOtherHalf = ({ half }: Sun, [latitude]: Pair) =>
  half !== undefined && latitude !== 0 && latitude > 0 !== (half === 'north');
