/** Where a place's weather comes from: its climate file, a bundled station, or an hourly file. */
import { type ClimateLibrary, nearestStations, stationOf, stationsByName } from './climate-library.ts';
import type { Found } from './found-climate.ts';
import { hourlyClimate, type WeatherFiles } from './hourly.ts';
import { type Loaded, problemAt } from './loaded.ts';
import { nearest, type Problem } from './problem.ts';
import { resolveClimate } from './resolve-place.ts';
import type { ClimateFile } from './schemas/climate.ts';
import type { PlaceFile } from './schemas/place.ts';
import type { Known } from './sound.ts';

/** Problems of a climate file that its schema cannot see: lists that must go together, figures that no climate has. */
export function climateProblems({ id, source, checked }: Loaded<ClimateFile>): Problem[] {
  const { sound, isWhole } = checked;
  const problems: Problem[] = [];
  for (const [what, ...names] of [
    ['the mean temperature', 'meanC', 'meanF'],
    ['the mean daily minimum', 'minC', 'minF'],
    ['the mean daily maximum', 'maxC', 'maxF'],
    ['the humidity', 'humidityPct', 'dewPointC', 'dewPointF'],
  ] as const) {
    const given = names.filter((n) => sound[n] !== undefined);
    if (given.length === 0 && names.every(isWhole))
      problems.push(
        problemAt(
          source,
          [names[0]],
          `found no line for ${what}, expected one of ${names.join(', ')}`,
          `Add "${names[0]}: [twelve numbers, January first]".`,
        ),
      );
    if (given.length > 1)
      problems.push(
        problemAt(
          source,
          [given[1]!],
          `found ${what} twice, as ${given.join(' and ')}, expected it once`,
          'Delete one of the two lines.',
        ),
      );
  }
  problems.push(...outOfOrder(source, sound), ...tooWide(source, sound), ...upsideDown(source, sound));
  if (problems.length > 0 || !checked.value) return problems;
  try {
    resolveClimate(id, checked.value);
    return [];
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return [
      problemAt(
        source,
        [],
        `found figures that no climate has: ${error.message}`,
        'Check the twelve numbers of each list and their unit.',
      ),
    ];
  }
}

/** The numbers of a list by month; none where it is not one of twelve, since then nothing says which is whose. */
function months(list: readonly (number | undefined)[] | undefined): readonly (number | undefined)[] {
  return list?.length === 12 ? list : [];
}

/** Between a month's mean minimum and maximum lie some 25 K at the most, in deserts; twice that is a slip [K]. */
const LARGEST_RANGE_K = 50;

/** Months whose days would swing as no climate's do: a sign is missing, or two figures have run together. */
function tooWide(source: Loaded<ClimateFile>['source'], c: Known<ClimateFile>): Problem[] {
  return (['C', 'F'] as const).flatMap((unit) => {
    const [mean, min, max] = [months(c[`mean${unit}`]), months(c[`min${unit}`]), months(c[`max${unit}`])];
    const most = LARGEST_RANGE_K * (unit === 'F' ? 1.8 : 1);
    return min.flatMap((low, m) => {
      const [middle, high] = [mean[m], max[m]];
      if (low === undefined || middle === undefined || high === undefined || high - low <= most) return [];
      const key = middle - low > high - middle ? `min${unit}` : `max${unit}`;
      const what = `found ${low} to ${high} °${unit} between the mean minimum and the mean maximum of month ${m + 1}, expected at most ${most} °${unit} between them`;
      return [problemAt(source, [key, m], what, 'Check the number and its sign.')];
    });
  });
}

/** Nearer to the equator the seasons are those of rain [°]. */
const SEASONS_FROM_DEG = 30;

/** A year whose cold months are those of the other half of the earth: a sign is missing, or the lists begin in July. */
function upsideDown(source: Loaded<ClimateFile>['source'], c: Known<ClimateFile>): Problem[] {
  const mean = months(c.meanC ?? c.meanF);
  const about = (list: readonly number[]) => list.reduce((sum, m) => sum + (mean[m] ?? Number.NaN), 0);
  const [january, july] = [about([11, 0, 1]), about([5, 6, 7])];
  const latitude = c.latitudeDeg ?? 0;
  const isTurned = latitude > 0 ? january > july : january < july;
  if (Math.abs(latitude) < SEASONS_FROM_DEG || !isTurned) return [];
  const [cold, half] = latitude > 0 ? ['July', 'north'] : ['January', 'south'];
  const what = `found a latitude of ${latitude}°, which is ${half}, and cold months about ${cold}, expected them half a year apart`;
  return [
    problemAt(source, ['latitudeDeg'], what, 'Correct the sign (south is negative), or begin each list with January.'),
  ];
}

/** Months told one by one of two lists. */
const MOST_MONTHS = 3;

/** Lists that must stand below one another, month by month, where they are in the same unit. */
function outOfOrder(source: Loaded<ClimateFile>['source'], c: Known<ClimateFile>): Problem[] {
  return (['C', 'F'] as const).flatMap((unit) =>
    (
      [
        ['recordLow', 'lowest on record', 'min', 'mean daily minimum'],
        ['min', 'mean daily minimum', 'mean', 'mean'],
        ['mean', 'mean', 'max', 'mean daily maximum'],
        ['dewPoint', 'dew point', 'mean', 'mean'],
      ] as const
    ).flatMap(([lower, lowerName, upper, upperName]) => {
      const [a, b] = [months(c[`${lower}${unit}`]), months(c[`${upper}${unit}`])];
      const key = lower === 'mean' ? `${upper}${unit}` : `${lower}${unit}`;
      const wrong = a.flatMap((value, m) => (value === undefined || b[m] === undefined || value <= b[m] ? [] : [m]));
      // Lists that changed places are one slip.
      const told = wrong.length > MOST_MONTHS ? wrong.slice(0, 1) : wrong;
      const others = wrong.length > told.length ? ` and in ${wrong.length - 1} others` : '';
      return told.map((m) =>
        problemAt(
          source,
          [key, m],
          `found a ${lowerName} of ${a[m]} above a ${upperName} of ${b[m]} in month ${m + 1}${others}, expected it below`,
          'Check both lists; January comes first in each.',
        ),
      );
    }),
  );
}

/**
 * The climate of a place.
 * @param climates - all climate files; of one that could not be read there is the id alone
 * @param files - all files of the folder, for hourly weather
 * @param library - the bundled stations
 */
export function climateOfPlace(
  { id, source, checked }: Loaded<PlaceFile>,
  climates: readonly (Loaded<ClimateFile> | { id: string })[],
  files: WeatherFiles,
  library: ClimateLibrary | undefined,
): Found {
  // Its forms have no field in common: it is sound as a whole, or nothing of it is.
  const wanted = checked.sound.climate as PlaceFile['climate'] | undefined;
  if (wanted === undefined) return { problems: [] };
  const say = (path: string[], what: string, fix: string): Found => ({
    problems: [problemAt(source, ['climate', ...path], what, fix)],
  });
  if (typeof wanted === 'string') {
    const file = climates.find((c) => c.id === wanted);
    if (!file) {
      const known = climates.map((c) => c.id);
      const near = nearest(wanted, known);
      return say(
        [],
        `found the climate "${wanted}", expected ${known.length > 0 ? `one of ${known.join(', ')}` : 'the id of a file in climates/'}`,
        near
          ? `Write ${near}.`
          : `${known.length > 0 ? 'Write one of these, add' : 'Add'} climates/${wanted}.yaml, or write climate: { near: [latitude, longitude] }.`,
      );
    }
    if (!('checked' in file) || !file.checked.value || climateProblems(file).length > 0) return { problems: [] };
    return { climate: resolveClimate(file.id, file.checked.value), problems: [] };
  }
  if ('hourly' in wanted) return hourlyClimate(id, wanted.hourly, files, say);
  if (!library)
    return say(
      [],
      'found a climate of the bundled library, which is not at hand here, expected a file in climates/',
      'Write the normals into a file in climates/.',
    );
  if ('near' in wanted) {
    const near = nearestStations(library, wanted.near[0], wanted.near[1], { elevationM: wanted.elevation })[0]!;
    return { climate: near.climate, station: stationOf(near), problems: [] };
  }
  const found = stationsByName(library, wanted.station);
  if (found.length === 1) return { climate: found[0]!.climate, problems: [] };
  const cities = [...new Set(library.file.name.map((name) => name.split(/[\s,(/-]/)[0]!))];
  const near = found.length === 0 ? nearest(wanted.station, cities) : undefined;
  if (found.length === 0)
    return say(
      ['station'],
      `found no station "${wanted.station}", expected the name of one in the bundled library`,
      `${near ? `Write ${near}, or` : 'Write'} climate: { near: [latitude, longitude] } to take the nearest one.`,
    );
  const some = found.slice(0, 6).map((f) => `${f.climate.name}, ${f.country} (${f.climate.id})`);
  return say(
    ['station'],
    `found ${found.length} stations for "${wanted.station}", expected one: ${some.join('; ')}${found.length > 6 ? '; …' : ''}`,
    'Write the number in brackets as the station, in quotes.',
  );
}
