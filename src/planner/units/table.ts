/**
 * Every unit that content and pages use, one row each.
 *
 * A value in the unit times `factor`, plus `offset`, is the value in the dimension's own unit, which is the unit the
 * planner's field names give (litres for volume, kilopascals for pressure, …).
 *
 * Source: exact by definition. International yard and pound agreement (1959): 1 in = 0.0254 m, 1 lb = 0.453 592 37 kg;
 * standard gravity 9.806 65 m/s² (3rd CGPM, 1901); US gallon 231 in³; imperial gallon 4.546 09 L (UK Units of Measurement
 * Regulations 1995). NIST SP 811 (2008), appendix B.8.
 */
export type Dimension =
  | 'volume'
  | 'smallVolume'
  | 'pressure'
  | 'temperature'
  | 'temperatureDifference'
  | 'torque'
  | 'charge'
  | 'current'
  | 'smallCurrent'
  | 'voltage'
  | 'mass'
  | 'smallMass'
  | 'length'
  | 'smallLength'
  | 'thickness'
  | 'distance'
  | 'area'
  | 'dose'
  | 'flow'
  | 'duration'
  | 'months'
  | 'percent';

export interface UnitRow {
  dimension: Dimension;
  /** As written by a person; the first is how it is printed. */
  names: readonly string[];
  factor: number;
  offset?: number;
}

const GRAVITY = 9.80665;
const POUND_KG = 0.45359237;
const INCH_M = 0.0254;
const US_GALLON_L = 231 * INCH_M ** 3 * 1000;
const IMPERIAL_GALLON_L = 4.54609;
const PSI_KPA = (POUND_KG * GRAVITY) / INCH_M ** 2 / 1000;
const POUND_FOOT_NM = POUND_KG * GRAVITY * INCH_M * 12;

export const UNITS: readonly UnitRow[] = [
  { dimension: 'volume', names: ['L', 'l', 'litre', 'litres', 'liter', 'liters'], factor: 1 },
  { dimension: 'volume', names: ['mL', 'ml', 'cc', 'cm³'], factor: 0.001 },
  { dimension: 'volume', names: ['US gal', 'gal (US)', 'US gallon', 'US gallons'], factor: US_GALLON_L },
  {
    dimension: 'volume',
    names: ['imp gal', 'UK gal', 'imperial gallon', 'imperial gallons'],
    factor: IMPERIAL_GALLON_L,
  },
  { dimension: 'volume', names: ['US qt', 'US quart', 'US quarts'], factor: US_GALLON_L / 4 },
  { dimension: 'volume', names: ['US pt', 'US pint', 'US pints'], factor: US_GALLON_L / 8 },
  { dimension: 'smallVolume', names: ['mL', 'ml', 'cc', 'cm³'], factor: 1 },
  { dimension: 'smallVolume', names: ['L', 'l'], factor: 1000 },
  { dimension: 'smallVolume', names: ['US fl oz', 'US oz'], factor: (US_GALLON_L * 1000) / 128 },
  { dimension: 'smallVolume', names: ['imp fl oz'], factor: (IMPERIAL_GALLON_L * 1000) / 160 },
  { dimension: 'pressure', names: ['kPa', 'kpa'], factor: 1 },
  { dimension: 'pressure', names: ['bar'], factor: 100 },
  { dimension: 'pressure', names: ['psi', 'PSI', 'lbf/in²'], factor: PSI_KPA },
  { dimension: 'temperature', names: ['°C', 'C', 'degC'], factor: 1 },
  { dimension: 'temperature', names: ['°F', 'F', 'degF'], factor: 5 / 9, offset: -160 / 9 },
  { dimension: 'temperatureDifference', names: ['K', '°C'], factor: 1 },
  { dimension: 'temperatureDifference', names: ['°F'], factor: 5 / 9 },
  { dimension: 'torque', names: ['N·m', 'Nm', 'N m', 'N-m', 'N.m'], factor: 1 },
  {
    dimension: 'torque',
    names: [
      'lbf·ft',
      'lbf ft',
      'ft·lbf',
      'ft lbf',
      'ft-lb',
      'ft·lb',
      'lb-ft',
      'lb·ft',
      'lbft',
      'ft lb',
      'ft-lbs',
      'ft lbs',
      'lb ft',
      'lbs ft',
      'lbs-ft',
    ],
    factor: POUND_FOOT_NM,
  },
  {
    dimension: 'torque',
    names: ['lbf·in', 'lbf in', 'in·lbf', 'in lbf', 'in-lb', 'in·lb', 'in lb', 'in-lbs', 'in lbs'],
    factor: POUND_FOOT_NM / 12,
  },
  { dimension: 'torque', names: ['kgf·m', 'kgf m', 'kg·m', 'kgm'], factor: GRAVITY },
  { dimension: 'charge', names: ['Ah', 'A·h', 'ah', 'AH'], factor: 1 },
  { dimension: 'charge', names: ['mAh'], factor: 0.001 },
  { dimension: 'current', names: ['A', 'amp', 'amps'], factor: 1 },
  { dimension: 'current', names: ['mA'], factor: 0.001 },
  { dimension: 'smallCurrent', names: ['mA'], factor: 1 },
  { dimension: 'smallCurrent', names: ['A'], factor: 1000 },
  { dimension: 'smallCurrent', names: ['µA', 'uA'], factor: 0.001 },
  { dimension: 'voltage', names: ['V', 'v', 'volts'], factor: 1 },
  { dimension: 'mass', names: ['kg'], factor: 1 },
  { dimension: 'mass', names: ['g'], factor: 0.001 },
  { dimension: 'mass', names: ['lb', 'lbs'], factor: POUND_KG },
  { dimension: 'smallMass', names: ['g'], factor: 1 },
  { dimension: 'smallMass', names: ['oz'], factor: (POUND_KG * 1000) / 16 },
  { dimension: 'length', names: ['m'], factor: 1 },
  { dimension: 'length', names: ['cm'], factor: 0.01 },
  { dimension: 'length', names: ['ft', 'feet'], factor: INCH_M * 12 },
  { dimension: 'length', names: ['in'], factor: INCH_M },
  { dimension: 'smallLength', names: ['mm'], factor: 1 },
  { dimension: 'smallLength', names: ['in'], factor: INCH_M * 1000 },
  { dimension: 'thickness', names: ['µm'], factor: 1 },
  // A thousandth of an inch.
  { dimension: 'thickness', names: ['mil'], factor: INCH_M * 1000 },
  { dimension: 'distance', names: ['km'], factor: 1 },
  { dimension: 'distance', names: ['mi', 'mile', 'miles'], factor: (INCH_M * 63360) / 1000 },
  { dimension: 'area', names: ['m²', 'm2'], factor: 1 },
  { dimension: 'area', names: ['ft²', 'ft2'], factor: (INCH_M * 12) ** 2 },
  { dimension: 'dose', names: ['mL/L', 'ml/l', 'mL/l'], factor: 1 },
  { dimension: 'dose', names: ['US fl oz/US gal', 'US oz/US gal'], factor: 1000 / 128 },
  { dimension: 'flow', names: ['L/h', 'l/h'], factor: 1 },
  { dimension: 'flow', names: ['US gal/h'], factor: US_GALLON_L },
  { dimension: 'duration', names: ['h', 'hour', 'hours'], factor: 1 },
  { dimension: 'duration', names: ['min', 'minutes'], factor: 1 / 60 },
  { dimension: 'duration', names: ['d', 'day', 'days'], factor: 24 },
  { dimension: 'months', names: ['months', 'month', 'mo'], factor: 1 },
  { dimension: 'months', names: ['years', 'year', 'yr'], factor: 12 },
  { dimension: 'percent', names: ['%', 'percent'], factor: 1 },
];
