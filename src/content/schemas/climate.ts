/** climates/<id>.yaml: monthly normals of a place. */
import { z } from 'zod';
import { line, number, quantity, say } from './parts.ts';

const MONTHS = 'twelve numbers, January first';

function monthly(description: string, example: number[], min: number, max: number) {
  return z
    .array(z.number().min(min).max(max))
    .check((ctx) => {
      if (ctx.value.length !== 12)
        say(ctx, { found: `${ctx.value.length} numbers`, expected: MONTHS, fix: 'Give one number for each month.' });
    })
    .meta({ description: `${description}: ${MONTHS}`, examples: [example] });
}

const t = [-12, -9, -3, 4, 10, 15, 17, 16, 11, 4, -4, -10];
const rh = [78, 76, 72, 64, 60, 64, 68, 70, 72, 74, 80, 80];

/** Each monthly quantity and the names it may be given by; the number turns the name's unit into the planner's. */
export const climate = z
  .strictObject({
    name: line('Name of the place', 'Tarn Hollow'),
    latitudeDeg: number('Latitude, north positive', 48.2, -90, 90),
    elevation: quantity('length', 'Height above the sea', '640 m', { min: -500, max: 6000 }),
    source: line('Where the figures come from', 'Own thermometer, 2009–2025', 400),
    attribution: line('Words to be shown with the figures', 'Weather notes of Tarn Hollow', 400).optional(),
    meanC: monthly('Mean temperature, °C', t, -75, 50).optional(),
    meanF: monthly('Mean temperature, °F', [10, 16, 27], -103, 122).optional(),
    minC: monthly(
      'Mean daily minimum, °C',
      t.map((v) => v - 5),
      -80,
      45,
    ).optional(),
    minF: monthly('Mean daily minimum, °F', [1, 5, 18], -112, 113).optional(),
    maxC: monthly(
      'Mean daily maximum, °C',
      t.map((v) => v + 5),
      -70,
      55,
    ).optional(),
    maxF: monthly('Mean daily maximum, °F', [19, 25, 36], -94, 131).optional(),
    humidityPct: monthly('Relative humidity over water, %', rh, 1, 100).optional(),
    dewPointC: monthly(
      'Dew point, °C',
      t.map((v) => v - 4),
      -80,
      35,
    ).optional(),
    dewPointF: monthly('Dew point, °F', [4, 9, 20], -112, 95).optional(),
    recordLowC: monthly(
      'Lowest on record, °C',
      t.map((v) => v - 25),
      -95,
      45,
    ).optional(),
    recordLowF: monthly('Lowest on record, °F', [-40, -35, -22], -139, 113).optional(),
    precipitationMm: monthly('Precipitation, mm a month', [22, 18, 20], 0, 5000).optional(),
    snowDepthCm: monthly('Mean snow depth, cm', [35, 42, 30, 4, 0, 0, 0, 0, 0, 0, 6, 20], 0, 2000).optional(),
  })
  .meta({ title: 'Climate', description: 'Monthly normals of a place: climates/<id>.yaml' });

export type ClimateFile = z.output<typeof climate>;
