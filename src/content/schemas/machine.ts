/** machines/<id>.yaml: one vehicle. All but name, kind and place may be left out; what is left out is assumed and listed. */
import * as z from 'zod/mini';
import { DRIVE_CHEMISTRIES } from '../kinds.ts';
import { CHEMISTRY_NAMES, KINDS } from './household.ts';
import { choice, count, date, flag, id, line, list, number, paragraph, quantity, ranged } from './parts.ts';
import { asLeft, charged, done, notes, readings, skipped } from './record.ts';
import { assemblies, jobs, services } from './work.ts';

const year = (description: string) => count(description, 1998, 1885, 2100);

const engine = z
  .strictObject({
    cycle: z.optional(choice('Working principle', ['four-stroke', 'two-stroke', 'electric'])),
    cylinders: z.optional(count('Cylinders', 2, 0, 16)),
    start: z.optional(
      choice('How it is started', ['electric', 'pull', 'kick', 'electric-and-pull', 'electric-and-kick']),
    ),
    oil: z.optional(quantity('volume', 'Engine oil at a change', '3.2 L', { min: 0, max: 60 })),
    oilFilter: z.optional(flag('Has an oil filter that is changed')),
    twoStrokeOil: z.optional(
      choice('Two-stroke oil: mixed into the tank, or injected from a tank of its own', ['premix', 'injected']),
    ),
    idleFlow: z.optional(quantity('flow', 'Fuel used at idle', '1 L/h', { min: 0.05, max: 10 })),
  })
  .register(z.globalRegistry, { description: 'The engine' });

const battery = z
  .strictObject({
    chemistry: z.optional(choice('What is inside; "flooded" alone is taken as flooded-antimony', CHEMISTRY_NAMES)),
    capacity: z.optional(
      quantity(
        'charge',
        'Capacity on the label; the cold-cranking figure (CCA, in amperes) is no measure of it',
        '12 Ah',
        { min: 0.5, max: 400 },
      ),
    ),
    health: z.optional(ranged('percent', 'Share of the rated capacity that is left', '85 %', { min: 10, max: 110 })),
    boughtYear: z.optional(year('Year it was bought')),
    selfDischarge: z.optional(
      ranged('percent', 'Loss at 20 °C in 30 days, disconnected', '6 %', { min: 0.1, max: 60 }),
    ),
    doubling: z.optional(
      ranged('temperatureDifference', 'Rise of temperature that doubles the loss', '9 K', {
        min: 5,
        max: 30,
      }),
    ),
    drain: z.optional(
      ranged('smallCurrent', 'Current drawn with the key off: meter in series at the negative lead', '3 mA', {
        min: 0,
        max: 500,
      }),
    ),
    memoryCircuits: z.optional(flag('Clock, alarm or the like draw current with the key off')),
    chargeAtLayUp: z.optional(ranged('percent', 'State of charge when the rest begins', '95 %', { min: 1, max: 100 })),
    care: z.optional(choice('How it is kept; left out, the planner chooses', ['maintainer', 'carry-in', 'visits'])),
    connected: z.optional(flag('Stays connected over the rest, for an alarm, say; left out, the planner chooses')),
    removable: z.optional(flag('Can be taken out without much work')),
  })
  .register(z.globalRegistry, { description: 'The battery; `battery: none` where there is none' });

const driveBattery = z
  .strictObject({
    chemistry: z.optional(choice('What is inside', DRIVE_CHEMISTRIES)),
    removable: z.optional(flag('Comes out of the machine without a workshop')),
    lowestStorage: z.optional(
      quantity('temperature', 'Lowest temperature at which its maker lets it be kept', '-20 °C', { min: -60, max: 20 }),
    ),
  })
  .register(z.globalRegistry, {
    description: 'The battery that drives an electric machine; the small 12 V one beside it is `battery`',
    examples: [{ chemistry: 'lithium-ion', removable: true }],
  });

const fuel = z
  .strictObject({
    delivery: z.optional(choice('How fuel reaches the engine', ['carburettor', 'injection'])),
    tank: z.optional(quantity('volume', 'Room in the tank', '17 L', { min: 0.2, max: 400 })),
    inTank: z.optional(ranged('volume', 'In the tank on the last day of use', '8 L', { min: 0, max: 400 })),
    blend: z.optional(choice('Ethanol in the fuel, as the pump says', ['E0', 'E5', 'E10', 'E15', 'E20', 'E85'])),
    tankMaterial: z.optional(choice('What the tank is made of', ['steel', 'plastic', 'aluminium'])),
    lined: z.optional(flag('The tank is lined or coated inside')),
    tap: z.optional(choice('Fuel tap (petcock)', ['vacuum', 'manual', 'none'])),
    taps: z.optional(count('Number of taps; some tanks have two joined by a tee', 2, 1, 4)),
    bowls: z.optional(count('Float bowls', 2, 0, 12)),
    lineAndBowls: z.optional(quantity('volume', 'Fuel in line, filter and bowls', '0.2 L', { min: 0, max: 10 })),
    boughtOn: z.optional(date('Day the fuel was bought', '2026-10-24')),
    premix: z.optional(flag('Two-stroke oil is mixed into the tank')),
    choice: z.optional(
      choice('Fill and stabilise, drain, or leave what is in the tank; left out, the planner chooses', [
        'fill',
        'drain',
        'leave',
      ]),
    ),
    densityKgPerM3: z.optional(number('Density at 15 °C', 745, 650, 850)),
  })
  .register(z.globalRegistry, { description: 'Fuel; `fuel: none` where there is none' });

const coolingKind = choice('What carries the heat away', ['air', 'oil', 'liquid', 'none']);
const cooling = z.union([
  coolingKind,
  z
    .strictObject({
      kind: z.optional(coolingKind),
      glycol: z.optional(choice('Glycol in the coolant', ['ethylene', 'propylene'])),
      strength: z.optional(
        z
          .union([z.literal('unknown'), quantity('percent', 'Glycol by volume', '50 %', { min: 0, max: 100 })])
          .register(z.globalRegistry, { description: 'Glycol by volume, or unknown', examples: ['50 %'] }),
      ),
      freezesAt: z.optional(
        quantity('temperature', 'Freezing point that a tester showed, in place of the strength', '-34 °C', {
          min: -100,
          max: 0,
        }),
      ),
      volume: z.optional(quantity('volume', 'Coolant in the whole system', '2.4 L', { min: 0.1, max: 60 })),
      drainable: z.optional(quantity('volume', 'What the drain plug lets out', '2 L', { min: 0.05, max: 60 })),
      refillStrength: z.optional(
        quantity('percent', 'Glycol by volume in what you top up with', '100 %', {
          min: 5,
          max: 100,
        }),
      ),
      lastChanged: z.optional(date('Day of the last change', '2024-10-05')),
      life: z.optional(quantity('months', 'Life of the coolant', '3 years', { min: 6, max: 240 })),
    })
    .register(z.globalRegistry, { description: 'Cooling and coolant' }),
]);

const tyre = z.strictObject({
  position: line('Which', 'front', 40),
  count: z.optional(count('How many', 1, 1, 12)),
  pressure: quantity('pressure', 'Normal pressure, cold', '225 kPa', { min: 10, max: 1000 }),
  sidewallMax: z.optional(
    quantity('pressure', 'Highest pressure marked on the sidewall', '290 kPa', {
      min: 10,
      max: 1200,
    }),
  ),
  madeYear: z.optional(year('Year in the date code on the sidewall')),
});

const chassis = z
  .strictObject({
    drive: z.optional(
      choice('How power reaches the ground; hub: a motor in the wheel or on the blade', [
        'chain',
        'belt',
        'shaft',
        'variator',
        'track',
        'gearbox',
        'hub',
      ]),
    ),
    brakes: z.optional(choice('Brakes', ['hydraulic', 'cable', 'mixed', 'none'])),
    brakeFluid: z.optional(choice('Fluid marked on the reservoir cap', ['DOT3', 'DOT4', 'DOT5', 'DOT5.1', 'mineral'])),
    clutch: z.optional(choice('Clutch', ['cable', 'hydraulic', 'automatic', 'none'])),
    throttle: z.optional(choice('Throttle', ['cable', 'wire'])),
    offGround: z.optional(flag('Stands with its weight off tyres or track during the rest')),
    skis: z.optional(flag('Has skis')),
    track: z.optional(flag('Has a track')),
    greasePoints: z.optional(count('Grease nipples', 6, 0, 60)),
    centreStand: z.optional(flag('Has a centre stand')),
    airbox: z.optional(flag('Has an airbox')),
    exhaustOutlets: z.optional(count('Exhaust outlets to plug', 2, 0, 8)),
    lights: z.optional(flag('Has lights')),
  })
  .register(z.globalRegistry, { description: 'What there is to grease, check and lift' });

const paperwork = list(
  z.strictObject({
    id: id('Short name', 'insurance'),
    what: line('What', 'Insurance'),
    date: date('Valid until, or due on', '2027-03-31'),
    kind: z.optional(choice('Kind', ['insurance', 'registration', 'inspection', 'other'])),
    pausedOverRest: z.optional(flag('Suspended over the rest, to be put in force before first use')),
  }),
  'Insurance, registration, inspection',
  50,
);

export const machine = z
  .strictObject({
    name: line('Name', 'Juniper', 80),
    kind: choice('Kind of machine', KINDS),
    place: id('Where it rests: a file in places/', 'tin-shed'),
    spot: z.optional(line('Where in that place it stands, for the rounds of charging', 'Row B, 12', 40)),
    use: z.optional(choice('What it is used for', ['road', 'snow', 'trail', 'work'])),
    year: z.optional(year('Model year')),
    lastUse: z.optional(date('Last day of use before the rest; left out, proposed from the climate', '2026-10-25')),
    firstUse: z.optional(date('First day of use after the rest; left out, proposed from the climate', '2027-04-10')),
    odometer: z.optional(quantity('distance', 'Odometer', '41200 km', { min: 0, max: 3e6 })),
    engineHours: z.optional(quantity('duration', 'Hour meter', '210 h', { min: 0, max: 1e5 })),
    nextSeason: z.optional(
      z
        .strictObject({
          distance: z.optional(quantity('distance', 'Expected distance', '6000 km', { min: 0, max: 2e5 })),
          hours: z.optional(quantity('duration', 'Expected engine hours', '60 h', { min: 0, max: 8760 })),
        })
        .register(z.globalRegistry, { description: 'Expected use in the coming season' }),
    ),
    battery: z.optional(
      z.union([z.literal('none'), battery]).register(z.globalRegistry, {
        description: 'The battery, or none',
        examples: [{ chemistry: 'agm', capacity: '12 Ah' }],
      }),
    ),
    driveBattery: z.optional(driveBattery),
    fuel: z.optional(
      z.union([z.literal('none'), fuel]).register(z.globalRegistry, {
        description: 'Fuel, or none',
        examples: [{ delivery: 'carburettor', tank: '17 L' }],
      }),
    ),
    cooling: z.optional(
      cooling.register(z.globalRegistry, {
        description: 'air, oil, liquid or none; or a group with the coolant',
        examples: ['air'],
      }),
    ),
    engine: z.optional(engine),
    tyres: z.optional(list(tyre, 'Tyres, one entry for each position; an empty list for none', 20)),
    chassis: z.optional(chassis),
    roadSalt: z.optional(
      z
        .strictObject({
          exposed: z.optional(flag('Used on salted roads, or handles road salt')),
          washed: z.optional(flag('Washed at lay-up')),
        })
        .register(z.globalRegistry, { description: 'Road salt', examples: [{ exposed: true, washed: true }] }),
    ),
    services: z.optional(services),
    paperwork: z.optional(paperwork),
    assemblies: z.optional(assemblies),
    jobs: z.optional(jobs),
    asLeft: z.optional(asLeft),
    readings: z.optional(readings),
    charged: z.optional(charged),
    done: z.optional(done),
    skipped: z.optional(skipped),
    notes: z.optional(notes),
    remarks: z.optional(paragraph('Anything else; shown nowhere', 'Bought from a neighbour')),
  })
  .register(z.globalRegistry, { title: 'Machine', description: 'One vehicle: machines/<id>.yaml' });

export type MachineFile = z.output<typeof machine>;
