import type { Household } from '../household.ts';
import { withSeparator } from '../written.ts';
import { type Dimension, UNITS } from './table.ts';

type System = Household['units'];

/** For whom something is written: units and language, or the units alone for numbers as English writes them. */
export type Reader = System | Pick<Household, 'units' | 'locale'>;

/** How a quantity is printed in a system. */
interface Print {
  unit: string;
  /** Digits after the point. */
  digits: number;
  /** Of the unit in SI. */
  factor: number;
  offset: number;
  /** The unit as a content file takes it. */
  written: string;
  /** What is less than one of the unit is printed by this. */
  less?: Print | undefined;
}

type Row = Record<System, Print> & {
  /** The other system whose figure stands in brackets after it; none where the reader's own says all. */
  beside: Partial<Record<System, System>>;
};

/** A wrench shows one of the two whatever the country, and the bench sheet is no place to convert. */
const TORQUE_BOTH = { metric: 'us', us: 'metric', imperial: 'metric' } as const;
/** Gauges outside the US show psi beside the metric scale. */
const GAUGES = { metric: 'us', imperial: 'metric' } as const;
/** Where gallons are thought in, pumps and bottles give litres. */
const POURED = { imperial: 'metric' } as const;

const litres = row('volume', ['L', 1], ['US gal', 2], ['imp gal', 2], POURED);
/** Where fuel is sold by the gallon, less than one is by the quart in the US, by the litre elsewhere. */
const { us: quarts, imperial: few } = row('volume', ['L', 1], ['US qt', 1], ['L', 1]);
/** Litres of oil and coolant, however many: manuals and bottles count in quarts in the US, in litres elsewhere. */
const QUARTS = 'L of oil or coolant';

/** Per unit of the plan: what the three systems print. */
const PRINTS: Record<string, Row> = {
  L: { ...litres, us: { ...litres.us, less: quarts }, imperial: { ...litres.imperial, less: few } },
  [QUARTS]: { ...litres, us: quarts, imperial: few },
  mL: row('smallVolume', ['mL', 0], ['US fl oz', 1], ['mL', 0]),
  kPa: row('pressure', ['kPa', 0], ['psi', 0], ['psi', 0], GAUGES),
  '°C': row('temperature', ['°C', 0], ['°F', 0], ['°C', 0]),
  K: differences(),
  N·m: row('torque', ['N·m', 1], ['lbf·ft', 1], ['lbf·ft', 1], TORQUE_BOTH),
  km: row('distance', ['km', 0], ['mi', 0], ['mi', 0]),
  m: row('length', ['m', 1], ['ft', 0], ['ft', 0]),
  'L/h': row('flow', ['L/h', 1], ['US gal/h', 2], ['L/h', 1]),
  'mL/L': row('dose', ['mL/L', 1], ['US fl oz/US gal', 2], ['mL/L', 1]),
  'm²': row('area', ['m²', 1], ['ft²', 0], ['ft²', 0]),
  kg: row('mass', ['kg', 1], ['lb', 1], ['lb', 1]),
  g: row('smallMass', ['g', 0], ['oz', 1], ['g', 0]),
  µm: row('thickness', ['µm', 1], ['mil', 2], ['µm', 1]),
  mm: row('smallLength', ['mm', 0], ['in', 2], ['in', 2]),
};

/** Gauges of continental Europe and of Britain show bar, those of other metric countries kilopascals. */
const BAR: Row = row('pressure', ['bar', 2], ['psi', 0], ['psi', 0], GAUGES);

/** Regions by ISO 3166-1. */
const BAR_REGIONS = new Set(
  (
    'AD AL AT BA BE BG BY CH CY CZ DE DK EE ES FI FO FR GB GG GI GR HR HU IE IM IS IT JE LI LT LU LV MC MD ME MK MT NL NO PL PT RO ' +
    'RS SE SI SJ SK SM UA VA XK'
  ).split(' '),
);

/** Whether the gauges of a reader's country show bar; one that names none has that of its language. */
function readsBar(reader: Reader): boolean {
  if (typeof reader === 'string') return false;
  const known = bars.get(reader.locale) ?? BAR_REGIONS.has(regionOf(reader.locale) ?? '');
  bars.set(reader.locale, known);
  return known;
}

/** Working out a region is dear, and one household asks hundreds of times. */
const bars = new Map<string, boolean>();

function regionOf(locale: string): string | undefined {
  try {
    return new Intl.Locale(locale).maximize().region;
  } catch {
    return undefined;
  }
}

/** The row by which a unit of the plan is printed for a reader. */
const rowOf = (unit: string, reader: Reader): Row | undefined =>
  unit === 'kPa' && readsBar(reader) ? BAR : PRINTS[unit];

/**
 * The unit by which a plan's litres are printed: those of oil and coolant by one of their own.
 * @param unit - unit of the plan
 * @param what - what is measured, in words or as its field or amount is called: "Engine oil", "engine.oil", "coolantSwap"
 * @returns the unit for `formatOne` and `formatQuantity`
 */
export const unitFor = (unit: string, what: string): string =>
  unit === 'L' && /\boil|cool/i.test(what) ? QUARTS : unit;

function row(
  dimension: Dimension,
  metric: [string, number],
  us: [string, number],
  imperial: [string, number],
  beside: Row['beside'] = {},
): Row {
  const print = ([unit, digits]: [string, number]): Print => {
    const { factor, offset = 0 } = UNITS.find((u) => u.dimension === dimension && u.names[0] === unit)!;
    return { unit, digits, factor, offset, written: unit };
  };
  return { metric: print(metric), us: print(us), imperial: print(imperial), beside };
}

/**
 * How far apart two temperatures are, in degrees of the reader's own thermometer. "18 °F" for 10 K would be read as a
 * temperature, and few people know a kelvin.
 */
function differences(): Row {
  const kelvins = row('temperatureDifference', ['K', 0], ['°F', 0], ['K', 0]);
  const said = (print: Print) => ({ ...print, unit: 'degrees' });
  return { metric: said(kelvins.metric), us: said(kelvins.us), imperial: said(kelvins.imperial), beside: {} };
}

/**
 * A value of the plan as text in the user's own system, without the other one.
 * @param value - in `unit`
 * @param unit - unit of the plan: "L", "kPa", "°C", "K" for a difference of temperatures, …; one without a row is printed as it is
 * @param reader - whose units and language
 * @param digits - digits after the point, instead of the usual ones
 * @param beside - the largest of the values it stands among, which are all to have one unit; itself where it stands alone
 */
export function formatOne(value: number, unit: string, reader: Reader, digits?: number, beside = value): string {
  const print = printOf(beside, unit, reader);
  const text = (v: number, d: number) => inLanguage(number(v, d), reader);
  if (!print)
    return `${text(value, digits ?? (Math.abs(value) < 10 && !Number.isInteger(value) ? 1 : 0))}${unit ? ` ${unit}` : ''}`;
  const figure = text((value - print.offset) / print.factor, digits ?? print.digits);
  return `${figure} ${print.unit === 'degrees' && figure === '1' ? 'degree' : print.unit}`;
}

/**
 * A value of the plan as text in the user's system, with the other system's figure in brackets where both are in use:
 * "25.0 N·m (18.4 lbf·ft)".
 * @param value - in `unit`
 * @param unit - unit of the plan
 */
export function formatQuantity(value: number, unit: string, reader: Reader): string {
  return withOther(unit, reader, (one) => formatOne(value, unit, one));
}

/**
 * A text whose amounts stand in braces, "up to {30 L}", with each in the user's system as `formatQuantity` has it.
 * @param text - with amounts in units of the plan; they are rounded to a tenth
 * @param reader - whose units and language
 */
export function inUnits(text: string, reader: Reader): string {
  return text.replaceAll(/\{(-?[\d.]+) ([^{}]+)\}/g, (_, value: string, unit: string) =>
    withOther(unit, reader, (one) => formatOne(Number(value), unit, one, 1).replace(/\D0(?= )/, '')),
  );
}

function withOther(unit: string, reader: Reader, textIn: (reader: Reader) => string): string {
  const units = rowOf(unit, reader)?.beside[unitsOf(reader)];
  if (units === undefined) return textIn(reader);
  const [own, other] = [textIn(reader), textIn(typeof reader === 'string' ? units : { ...reader, units })];
  return own === other ? own : `${own} (${other})`;
}

/**
 * A difference of temperatures with a sign of its own, for an equation that counts in kelvins: "5 Δ°C", "9 Δ°F".
 * @param kelvin - the difference [K]
 * @param reader - whose degrees and language
 */
export function formatDifference(kelvin: number, reader: Reader): string {
  const { written, factor } = PRINTS.K![unitsOf(reader)];
  return `${inLanguage(number(kelvin / factor, 1).replace(/\.0$/, ''), reader)} Δ${written.replace('K', '°C')}`;
}

/**
 * Lines of a content file with their amounts in the user's system: "fuel: { inTank: 3.79 L }" becomes "… 1.00 US gal }".
 * @param line - as it may stand in the file
 * @param reader - whose units; decimals keep the point of the file
 */
export function lineInUnits(line: string, reader: Reader): string {
  return line.replaceAll(/(-?\d+(?:\.\d+)?) (\S+?)(?=[\s,}\]]|$)/g, (whole, value: string, unit: string) => {
    const print = isForeign(unit, reader) && printOf(Number(value), unitFor(unit, line), reader);
    if (!print) return whole;
    return `${number((Number(value) - print.offset) / print.factor, print.digits).replace('−', '-')} ${print.written}`;
  });
}

/** How a value is printed for a reader; nothing for a unit without a row. */
function printOf(value: number, unit: string, reader: Reader): Print | undefined {
  const print = rowOf(unit, reader)?.[unitsOf(reader)];
  return print?.less !== undefined && Math.abs(value) < print.factor ? print.less : print;
}

/** Whether a unit of the plan is another one to a reader: what is written in it needs the reader's beside it. */
export const isForeign = (unit: string, reader: Reader): boolean => {
  const written = rowOf(unit, reader)?.[unitsOf(reader)].written;
  return written !== undefined && written !== unit;
};

const unitsOf = (reader: Reader): System => (typeof reader === 'string' ? reader : reader.units);

/** A number as the reader's language writes it; as English does where that is not known. */
export const inLanguage = (text: string, reader: Reader) =>
  typeof reader === 'string' ? text : withSeparator(text, reader.locale);

/** A number with a typographic minus and without "−0". */
function number(value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`found ${value}, expected a number that can be printed`);
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}
