/** places/<id>.yaml: where machines are stored. */
import * as z from 'zod/mini';
import { ENCLOSURES } from '../../planner/storage/index.ts';
import { choice, flag, id, line, number, quantity } from './parts.ts';

const ROWS = ENCLOSURES.map((e) => e.id) as [string, ...string[]];
const DESCRIPTIONS = ENCLOSURES.map((e) => `${e.id}: ${e.description}`).join('; ');

const enclosureId = choice(`What stands between the machine and the weather. ${DESCRIPTIONS}`, ROWS);

const ownEnclosure = z
  .strictObject({
    like: enclosureId,
    timeConstant: z.optional(
      quantity('duration', 'Time in which the air inside follows two thirds of a change outdoors', '5 h', {
        min: 0,
        max: 500,
      }),
    ),
    airChangesPerHour: z.optional(number('Air changes with outdoors in an hour', 1, 0.01, 100)),
    houseShare: z.optional(
      quantity('percent', 'How much of the way from outdoors to the heated house the store settles', '30 %', {
        min: 0,
        max: 100,
      }),
    ),
    houseTemperature: z.optional(quantity('temperature', 'Temperature of that house', '18 °C', { min: 0, max: 35 })),
    gain: z.optional(
      quantity('temperatureDifference', 'Constant warmth above outdoors: freezer, ground', '1 K', {
        min: 0,
        max: 20,
      }),
    ),
    heatedTo: z.optional(quantity('temperature', 'Held at this temperature or warmer', '5 °C', { min: -20, max: 30 })),
    humidityAtMost: z.optional(
      quantity('percent', 'A dehumidifier holds this relative humidity or less', '50 %', {
        min: 20,
        max: 100,
      }),
    ),
    dampFloorPa: z.optional(number('Vapour pressure that a damp floor adds, Pa', 100, 0, 1000)),
  })
  .register(z.globalRegistry, { description: 'A row of the table with own figures in place of some of its' });

const climateOf = z
  .union([
    id('A file in climates/', 'tarn-hollow'),
    z
      .strictObject({
        near: z
          .tuple([z.number().check(z.gte(-90), z.lte(90)), z.number().check(z.gte(-180), z.lte(180))])
          .register(z.globalRegistry, {
            description: 'Latitude and longitude, north and east positive; two decimals are enough',
            examples: [[48.2, 13.5]],
          }),
        elevation: z.optional(quantity('length', 'Height above the sea', '640 m', { min: -500, max: 6000 })),
      })
      .register(z.globalRegistry, { description: 'The nearest station of the bundled library' }),
    z
      .strictObject({
        station: line(
          'Name or number of a station in the bundled library; "name, CC" narrows to a country',
          'Duluth, US',
        ),
      })
      .register(z.globalRegistry, { description: 'A station of the bundled library' }),
    z
      .strictObject({
        hourly: line('Hourly weather file in EPW form, inside the content folder', 'climates/station.epw', 200),
      })
      .register(z.globalRegistry, { description: 'One year of hourly weather' }),
  ])
  .register(z.globalRegistry, {
    description:
      'Where the weather comes from: a file in climates/, { near: [latitude, longitude] }, { station: name } or { hourly: file }',
    examples: ['tarn-hollow'],
  });

export const place = z
  .strictObject({
    name: line('Name of the place', 'Tin shed'),
    enclosure: z.union([enclosureId, ownEnclosure]).register(z.globalRegistry, {
      description: `The kind of store (${ROWS.join(', ')}), or { like: …, own figures }`,
      examples: ['thin-metal-shed'],
    }),
    power: flag('Mains power: a charger can stay connected', false),
    climate: climateOf,
    trip: z.optional(quantity('duration', 'Time to go there and back', '10 min', { min: 0, max: 24 })),
    rodents: z.optional(flag('Mice get in')),
    bench: z.optional(flag('There is light and room to work')),
    salt: z.optional(
      choice('Salt in the air: none inland; near a salted road; near a sheltered coast; near surf', [
        'none',
        'salted-road',
        'coast',
        'surf',
      ]),
    ),
    chlorideMgM2D: z.optional(number('Chloride deposition, mg/(m² d), where it is known', 3, 0, 5000)),
    sulphurDioxideMgM2D: z.optional(number('Sulphur dioxide deposition, mg/(m² d), where it is known', 1, 0, 500)),
  })
  .register(z.globalRegistry, { title: 'Place', description: 'Where machines are stored: places/<id>.yaml' });

export type PlaceFile = z.output<typeof place>;
