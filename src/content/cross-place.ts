/** What only shows when a place is held against the household's time zone: coordinates that lost a sign, or changed places. */
import type { PlaceFile } from './schemas/place.ts';

/** Degrees, north and east positive. */
type Coordinates = readonly [latitude: number, longitude: number];

/** No zone's standard time is further from its sun; that of western China is 2.9 h from it [h]. */
const FAR_FROM_SUN_H = 3.5;

/** Within so much nearly every place has the sun of its zone [h]. */
const NEAR_SUN_H = 2;

/**
 * The coordinates that were meant where the given ones are far from the household's time zone, or on the other half of the earth, and
 * a sign or the order of the two puts them right. Where nothing puts them right, the place is abroad. It may be in any case, so that
 * this is a doubt and no fault.
 * @param near - as given
 * @param zone - IANA name; of one without a place, such as UTC, nothing is said
 * @param asOf - the day of the plan: zones change
 */
export function meantCoordinates(near: Coordinates, zone: string, asOf: string): Coordinates | undefined {
  if (!/^(?!Etc\/).+\//.test(zone)) return undefined;
  const sun = sunOf(zone, Number(asOf.slice(0, 4)));
  const [latitude, longitude] = near;
  const isIn = (pair: Coordinates) => hoursBetween(sun, pair) <= NEAR_SUN_H && !isOtherHalf(sun, pair);
  const turned: Coordinates = [longitude, latitude];
  const isTurned = Math.abs(longitude) <= 90 && isIn(turned) && !isIn(near);
  const isFar = hoursBetween(sun, near) > FAR_FROM_SUN_H;
  const signs: Coordinates[] = isFar ? [[latitude, -longitude]] : [];
  // A minus is forgotten; nobody writes one too many.
  if (latitude > 0) signs.push([-latitude, longitude], ...(isFar ? [[-latitude, -longitude] as const] : []));
  return signs.find((pair) => (isFar || isOtherHalf(sun, near)) && isIn(pair)) ?? (isTurned ? turned : undefined);
}

/**
 * What to say of a place whose coordinates are not where the household's clocks are, though others like them would be.
 * @param id - of the place
 * @param place - its file
 * @param station - whose figures are taken
 * @param zone - IANA name
 * @param asOf - the day of the plan
 */
export function placeDoubts(
  id: string,
  { name, climate }: PlaceFile,
  station: { name: string } | undefined,
  zone: string,
  asOf: string,
): { text: string; act: string }[] {
  const near = typeof climate === 'object' && 'near' in climate ? climate.near : undefined;
  const meant = near && meantCoordinates(near, zone, asOf);
  if (!meant) return [];
  return [
    {
      text: `${name} is given at ${written(near)}${station ? `, near ${station.name}` : ''}: that is not where clocks keep the time of ${zone}. Every date and every cold to be reckoned with hangs on it.`,
      act: `If a minus or the order was lost, write near: [${meant.join(', ')}] in places/${id}.yaml; south and west are negative, latitude comes first. If the place is there, name the station instead, and this is not said any more.`,
    },
  ];
}

const written = ([latitude, longitude]: Coordinates) =>
  `${Math.abs(latitude)}° ${latitude < 0 ? 'south' : 'north'}, ${Math.abs(longitude)}° ${longitude < 0 ? 'west' : 'east'}`;

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
function hoursBetween({ offsetH }: Sun, [, longitude]: Coordinates): number {
  const apart = Math.abs(offsetH - longitude / 15) % 24;
  return Math.min(apart, 24 - apart);
}

const isOtherHalf = ({ half }: Sun, [latitude]: Coordinates) =>
  half !== undefined && latitude !== 0 && latitude > 0 !== (half === 'north');
