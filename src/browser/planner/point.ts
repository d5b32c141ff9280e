/** Coordinates as people write them: "52.4, -113.8", "52,4 -113,8", "52.4° N, 113.8° W". */

const NUMBER = String.raw`([-−]?\d+(?:[.,]\d+)?)\s*°?\s*`;
const POINT = new RegExp(String.raw`^\s*${NUMBER}([NS])?\s*[,;\s]\s*${NUMBER}([EW])?\s*$`, 'i');

/**
 * The place that a text names by its coordinates.
 * @returns latitude and longitude [°]; undefined where it is none
 */
export function pointIn(text: string): readonly [latitudeDeg: number, longitudeDeg: number] | undefined {
  const [, lat, ns = '', lon, ew = ''] = POINT.exec(text) ?? [];
  if (lat === undefined || lon === undefined) return undefined;
  const degrees = (number: string, side: string) =>
    Number(number.replace('−', '-').replace(',', '.')) * (/[SW]/i.test(side) ? -1 : 1);
  const point = [degrees(lat, ns), degrees(lon, ew)] as const;
  return Math.abs(point[0]) <= 90 && Math.abs(point[1]) <= 180 ? point : undefined;
}
