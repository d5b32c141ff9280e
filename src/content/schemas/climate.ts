/** climates/<id>.yaml: monthly normals of a place. */
import * as z from 'zod/mini';
import { line, number, quantity, say } from './parts.ts';

const MONTHS = 'twelve numbers, January first';

function monthly(description: string, example: number[], min: number, max: number) {
  return z
    .array(z.number().check(z.gte(min), z.lte(max)))
    .check((ctx) => {
      if (ctx.value.length !== 12)
        say(ctx, { found: `${ctx.value.length} numbers`, expected: MONTHS, fix: 'Give one number for each month.' });
    })
    .register(z.globalRegistry, { description: `${description}: ${MONTHS}`, examples: [example] });
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
    attribution: z.optional(line('Words to be shown with the figures', 'Weather notes of Tarn Hollow', 400)),
    meanC: z.optional(monthly('Mean temperature, °C', t, -75, 50)),
    meanF: z.optional(monthly('Mean temperature, °F', [10, 16, 27], -103, 122)),
    minC: z.optional(
      monthly(
        'Mean daily minimum, °C',
        t.map((v) => v - 5),
        -80,
        45,
      ),
    ),
    minF: z.optional(monthly('Mean daily minimum, °F', [1, 5, 18], -112, 113)),
    maxC: z.optional(
      monthly(
        'Mean daily maximum, °C',
        t.map((v) => v + 5),
        -70,
        55,
      ),
    ),
    maxF: z.optional(monthly('Mean daily maximum, °F', [19, 25, 36], -94, 131)),
    humidityPct: z.optional(monthly('Relative humidity over water, %', rh, 1, 100)),
    dewPointC: z.optional(
      monthly(
        'Dew point, °C',
        t.map((v) => v - 4),
        -80,
        35,
      ),
    ),
    dewPointF: z.optional(monthly('Dew point, °F', [4, 9, 20], -112, 95)),
    recordLowC: z.optional(
      monthly(
        'Lowest on record, °C',
        t.map((v) => v - 25),
        -95,
        45,
      ),
    ),
    recordLowF: z.optional(monthly('Lowest on record, °F', [-40, -35, -22], -139, 113)),
    precipitationMm: z.optional(monthly('Precipitation, mm a month', [22, 18, 20], 0, 5000)),
    snowDepthCm: z.optional(monthly('Mean snow depth, cm', [35, 42, 30, 4, 0, 0, 0, 0, 0, 0, 6, 20], 0, 2000)),
  })
  .register(z.globalRegistry, { title: 'Climate', description: 'Monthly normals of a place: climates/<id>.yaml' });

export type ClimateFile = z.output<typeof climate>;
