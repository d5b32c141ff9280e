/** Household, places and climates as written -> the planner's, with defaults filled in. */
import { type Climate, checkClimate, relativeHumidityPct, saturationOverWaterPa } from '../planner/climate/index.ts';
import type { AssumedField, BatteryChemistry, Household, Place, Weekday } from '../planner/household.ts';
import { enclosureById } from '../planner/storage/index.ts';
import type { ClimateFile } from './schemas/climate.ts';
import type { HouseholdFile } from './schemas/household.ts';
import type { PlaceFile } from './schemas/place.ts';

const toC = (f: number) => ((f - 32) * 5) / 9;

/**
 * A climate file as the planner's normals.
 * @returns the climate; throws RangeError in plain words where the figures cannot be a climate
 */
export function resolveClimate(id: string, raw: ClimateFile): Climate {
  const pick = (c: number[] | undefined, f: number[] | undefined) => c ?? f?.map(toC);
  const meanC = pick(raw.meanC, raw.meanF)!;
  const dewC = pick(raw.dewPointC, raw.dewPointF);
  const rhPct =
    raw.humidityPct ?? dewC!.map((t, m) => Math.min(100, relativeHumidityPct(meanC[m]!, saturationOverWaterPa(t))));
  const climate: Climate = {
    kind: 'normals',
    id,
    name: raw.name,
    latitudeDeg: raw.latitudeDeg,
    elevationM: raw.elevation,
    normals: {
      meanC,
      minC: pick(raw.minC, raw.minF)!,
      maxC: pick(raw.maxC, raw.maxF)!,
      rhPct,
      precipMm: raw.precipitationMm,
      snowDepthCm: raw.snowDepthCm,
      recordLowC: pick(raw.recordLowC, raw.recordLowF),
    },
    source: raw.source,
    attribution: raw.attribution ?? raw.source,
  };
  checkClimate(climate);
  return climate;
}

/** Chloride deposition by what is near [mg/(m² d)]: ISO 9223:2012, deposition classes S0 (≤ 3), S1, S2, S3, from memory. */
const SALT: Record<NonNullable<PlaceFile['salt']>, number> = { none: 1.5, 'salted-road': 15, coast: 60, surf: 300 };

/** Sulphur dioxide of clean inland air [mg/(m² d)]: ISO 9223:2012, class P0 (≤ 4), from memory. */
const CLEAN_AIR_SO2 = 1;

/** One trip to look in, there and back, where it is not given [min]; common practice. */
const TRIP_MINUTES = 10;

/** A place as the planner takes it, and what was assumed of it. */
export function resolvePlace(
  id: string,
  raw: PlaceFile,
  climate: Climate,
  station: Place['station'],
): { place: Place; assumptions: AssumedField[] } {
  const own = typeof raw.enclosure === 'string' ? { like: raw.enclosure } : raw.enclosure;
  const row = enclosureById(own.like);
  const { description: _, timeConstantRangeH, airChangesRangePerH, houseCouplingRange, source, ...enclosure } = row;
  const place: Place = {
    id,
    name: raw.name,
    enclosure: {
      ...enclosure,
      timeConstantH: own.timeConstant ?? row.timeConstantH,
      airChangesPerH: own.airChangesPerHour ?? row.airChangesPerH,
      houseCoupling: own.houseShare === undefined ? row.houseCoupling : own.houseShare / 100,
      houseC: own.houseTemperature ?? row.houseC,
      gainK: own.gain ?? row.gainK,
      setpointC: own.heatedTo ?? row.setpointC,
      maxRhPct: own.humidityAtMost ?? row.maxRhPct,
      dampFloorPa: own.dampFloorPa ?? row.dampFloorPa,
    },
    power: raw.power,
    climate,
    station,
    sulphurDioxideMgM2D: raw.sulphurDioxideMgM2D ?? CLEAN_AIR_SO2,
    chlorideMgM2D: raw.chlorideMgM2D ?? SALT[raw.salt ?? 'none'],
    tripMinutes: raw.trip === undefined ? TRIP_MINUTES : raw.trip * 60,
    rodents: raw.rodents ?? true,
    bench: raw.bench ?? false,
  };
  const assumptions: AssumedField[] = [];
  const add = (
    key: string,
    target: string,
    value: number,
    range: { low: number; high: number },
    unit: string,
    text: string,
  ) => {
    if (!(range.high > range.low)) return;
    assumptions.push({
      field: `places/${id}: enclosure.${key}`,
      target: `place.enclosure.${target}`,
      value,
      low: range.low,
      high: range.high,
      unit,
      reason: `row ${own.like} of the table of enclosures: ${source}`,
      settle: `enclosure: { like: ${own.like}, ${key}: ${text} }`,
    });
  };
  const { timeConstantH, airChangesPerH, houseCoupling } = row;
  if (own.timeConstant === undefined)
    add('timeConstant', 'timeConstantH', timeConstantH, timeConstantRangeH, 'h', `${timeConstantH} h`);
  if (own.houseShare === undefined)
    add('houseShare', 'houseCoupling', houseCoupling, houseCouplingRange, 'share', `${houseCoupling * 100} %`);
  if (own.airChangesPerHour === undefined)
    add('airChangesPerHour', 'airChangesPerH', airChangesPerH, airChangesRangePerH, '1/h', `${airChangesPerH}`);
  return { place, assumptions };
}

const WEEKDAYS: readonly Weekday[] = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

/** Hours where none are given: a weekend's worth; common practice. */
const DEFAULT_HOURS: Partial<Record<Weekday, number>> = { saturday: 4, sunday: 4 };

/** Room in an approved can where none is named: 10 L; in the US 5 US gal of 3.785411784 L, the usual large one. Common practice. */
const CAN_L = 10;
const US_CAN_L = 5 * 3.785411784;

/** The household's own part, without places, machines and procedures. */
export function resolveHousehold(
  raw: HouseholdFile,
  revised: string,
): Omit<Household, 'places' | 'machines' | 'procedures'> {
  const hours = raw.hours ?? DEFAULT_HOURS;
  return {
    id: raw.id,
    name: raw.name,
    zone: raw.timeZone,
    locale: raw.locale ?? (raw.units === 'us' ? 'en-US' : 'en-GB'),
    clock: raw.clock ?? (raw.units === 'us' ? '12h' : '24h'),
    units: raw.units,
    country: raw.country,
    hoursByWeekday: Object.fromEntries(WEEKDAYS.map((d) => [d, hours[d] ?? 0])) as Record<Weekday, number>,
    away: raw.away ?? [],
    hands: raw.hands ?? 1,
    chargers: (raw.chargers ?? []).map((c) => ({
      id: c.id,
      name: c.name,
      currentA: c.current,
      chemistries: [
        ...new Set(
          c.chemistries.flatMap((n): BatteryChemistry[] =>
            n === 'flooded' ? ['flooded-antimony', 'flooded-calcium'] : [n],
          ),
        ),
      ],
      maintainer: c.maintainer ?? false,
      placeId: c.place,
    })),
    stands: raw.stands ?? [],
    fuelCare: {
      stabiliserDoseMLPerL: raw.fuelCare?.stabiliserDose,
      canL: raw.fuelCare?.can ?? (raw.units === 'us' ? US_CAN_L : CAN_L),
      cans: raw.fuelCare?.cans ?? 0,
    },
    batteryRoom: raw.batteryRoom && { name: raw.batteryRoom.name, temperatureC: raw.batteryRoom.temperature },
    revised,
    seed: raw.seed ?? 1,
    siteUrl: raw.siteUrl ?? '',
  };
}
