/** machines/<id>.yaml: one vehicle. All but name, kind and place may be left out; what is left out is assumed and listed. */
import { z } from 'zod';
import { CHEMISTRY_NAMES, KINDS } from './household.ts';
import { choice, count, date, flag, id, line, list, number, paragraph, quantity, ranged } from './parts.ts';
import { asLeft, charged, done, notes, readings, skipped } from './record.ts';
import { assemblies, jobs, services } from './work.ts';

const year = (description: string) => count(description, 1998, 1885, 2100);

const engine = z
  .strictObject({
    cycle: choice('Working principle', ['four-stroke', 'two-stroke', 'electric']).optional(),
    cylinders: count('Cylinders', 2, 0, 16).optional(),
    start: choice('How it is started', [
      'electric',
      'pull',
      'kick',
      'electric-and-pull',
      'electric-and-kick',
    ]).optional(),
    oil: quantity('volume', 'Engine oil at a change', '3.2 L', { min: 0, max: 60 }).optional(),
    oilFilter: flag('Has an oil filter that is changed').optional(),
    twoStrokeOil: choice('Two-stroke oil: mixed into the tank, or injected from a tank of its own', [
      'premix',
      'injected',
    ]).optional(),
    idleFlow: quantity('flow', 'Fuel used at idle', '1 L/h', { min: 0.05, max: 10 }).optional(),
  })
  .meta({ description: 'The engine' });

const battery = z
  .strictObject({
    chemistry: choice('What is inside; "flooded" alone is taken as flooded-antimony', CHEMISTRY_NAMES).optional(),
    capacity: quantity(
      'charge',
      'Capacity on the label; the cold-cranking figure (CCA, in amperes) is no measure of it',
      '12 Ah',
      { min: 0.5, max: 400 },
    ).optional(),
    health: ranged('percent', 'Share of the rated capacity that is left', '85 %', { min: 10, max: 110 }).optional(),
    boughtYear: year('Year it was bought').optional(),
    selfDischarge: ranged('percent', 'Loss at 20 °C in 30 days, disconnected', '6 %', { min: 0.1, max: 60 }).optional(),
    doubling: ranged('temperatureDifference', 'Rise of temperature that doubles the loss', '9 K', {
      min: 5,
      max: 30,
    }).optional(),
    drain: ranged('smallCurrent', 'Current drawn with the key off: meter in series at the negative lead', '3 mA', {
      min: 0,
      max: 500,
    }).optional(),
    memoryCircuits: flag('Clock, alarm or the like draw current with the key off').optional(),
    chargeAtLayUp: ranged('percent', 'State of charge when the rest begins', '95 %', { min: 1, max: 100 }).optional(),
    care: choice('How it is kept; left out, the planner chooses', ['maintainer', 'carry-in', 'visits']).optional(),
    connected: flag('Stays connected over the rest, for an alarm, say; left out, the planner chooses').optional(),
    removable: flag('Can be taken out without much work').optional(),
  })
  .meta({ description: 'The battery; `battery: none` where there is none' });

const fuel = z
  .strictObject({
    delivery: choice('How fuel reaches the engine', ['carburettor', 'injection']).optional(),
    tank: quantity('volume', 'Room in the tank', '17 L', { min: 0.2, max: 400 }).optional(),
    inTank: ranged('volume', 'In the tank on the last day of use', '8 L', { min: 0, max: 400 }).optional(),
    blend: choice('Ethanol in the fuel, as the pump says', ['E0', 'E5', 'E10', 'E15', 'E20', 'E85']).optional(),
    tankMaterial: choice('What the tank is made of', ['steel', 'plastic', 'aluminium']).optional(),
    lined: flag('The tank is lined or coated inside').optional(),
    tap: choice('Fuel tap (petcock)', ['vacuum', 'manual', 'none']).optional(),
    taps: count('Number of taps; some tanks have two joined by a tee', 2, 1, 4).optional(),
    bowls: count('Float bowls', 2, 0, 12).optional(),
    lineAndBowls: quantity('volume', 'Fuel in line, filter and bowls', '0.2 L', { min: 0, max: 10 }).optional(),
    boughtOn: date('Day the fuel was bought', '2026-10-24').optional(),
    premix: flag('Two-stroke oil is mixed into the tank').optional(),
    choice: choice('Fill and stabilise, or drain; left out, the planner chooses', ['fill', 'drain']).optional(),
    densityKgPerM3: number('Density at 15 °C', 745, 650, 850).optional(),
  })
  .meta({ description: 'Fuel; `fuel: none` where there is none' });

const coolingKind = choice('What carries the heat away', ['air', 'oil', 'liquid', 'none']);
const cooling = z.union([
  coolingKind,
  z
    .strictObject({
      kind: coolingKind.optional(),
      glycol: choice('Glycol in the coolant', ['ethylene', 'propylene']).optional(),
      strength: z
        .union([z.literal('unknown'), quantity('percent', 'Glycol by volume', '50 %', { min: 0, max: 100 })])
        .meta({ description: 'Glycol by volume, or unknown', examples: ['50 %'] })
        .optional(),
      volume: quantity('volume', 'Coolant in the whole system', '2.4 L', { min: 0.1, max: 60 }).optional(),
      drainable: quantity('volume', 'What the drain plug lets out', '2 L', { min: 0.05, max: 60 }).optional(),
      refillStrength: quantity('percent', 'Glycol by volume in what you top up with', '100 %', {
        min: 5,
        max: 100,
      }).optional(),
      lastChanged: date('Day of the last change', '2024-10-05').optional(),
      life: quantity('months', 'Life of the coolant', '3 years', { min: 6, max: 240 }).optional(),
    })
    .meta({ description: 'Cooling and coolant' }),
]);

const tyre = z.strictObject({
  position: line('Which', 'front', 40),
  count: count('How many', 1, 1, 12).optional(),
  pressure: quantity('pressure', 'Normal pressure, cold', '225 kPa', { min: 10, max: 1000 }),
  sidewallMax: quantity('pressure', 'Highest pressure marked on the sidewall', '290 kPa', {
    min: 10,
    max: 1200,
  }).optional(),
  madeYear: year('Year in the date code on the sidewall').optional(),
});

const chassis = z
  .strictObject({
    drive: choice('How power reaches the ground', [
      'chain',
      'belt',
      'shaft',
      'variator',
      'track',
      'gearbox',
    ]).optional(),
    brakes: choice('Brakes', ['hydraulic', 'cable', 'mixed', 'none']).optional(),
    brakeFluid: choice('Fluid marked on the reservoir cap', ['DOT3', 'DOT4', 'DOT5', 'DOT5.1', 'mineral']).optional(),
    clutch: choice('Clutch', ['cable', 'hydraulic', 'automatic', 'none']).optional(),
    throttle: choice('Throttle', ['cable', 'wire']).optional(),
    offGround: flag('Stands with its weight off tyres or track during the rest').optional(),
    skis: flag('Has skis').optional(),
    track: flag('Has a track').optional(),
    greasePoints: count('Grease nipples', 6, 0, 60).optional(),
    centreStand: flag('Has a centre stand').optional(),
    airbox: flag('Has an airbox').optional(),
    exhaustOutlets: count('Exhaust outlets to plug', 2, 0, 8).optional(),
    lights: flag('Has lights').optional(),
  })
  .meta({ description: 'What there is to grease, check and lift' });

const paperwork = list(
  z.strictObject({
    id: id('Short name', 'insurance'),
    what: line('What', 'Insurance'),
    date: date('Valid until, or due on', '2027-03-31'),
    kind: choice('Kind', ['insurance', 'registration', 'inspection', 'other']).optional(),
    pausedOverRest: flag('Suspended over the rest, to be put in force before first use').optional(),
  }),
  'Insurance, registration, inspection',
  50,
);

export const machine = z
  .strictObject({
    name: line('Name', 'Juniper', 80),
    kind: choice('Kind of machine', KINDS),
    place: id('Where it rests: a file in places/', 'tin-shed'),
    spot: line('Where in that place it stands, for the rounds of charging', 'Row B, 12', 40).optional(),
    use: choice('What it is used for', ['road', 'snow', 'trail', 'work']).optional(),
    year: year('Model year').optional(),
    lastUse: date('Last day of use before the rest; left out, proposed from the climate', '2026-10-25').optional(),
    firstUse: date('First day of use after the rest; left out, proposed from the climate', '2027-04-10').optional(),
    odometer: quantity('distance', 'Odometer', '41200 km', { min: 0, max: 3e6 }).optional(),
    engineHours: quantity('duration', 'Hour meter', '210 h', { min: 0, max: 1e5 }).optional(),
    nextSeason: z
      .strictObject({
        distance: quantity('distance', 'Expected distance', '6000 km', { min: 0, max: 2e5 }).optional(),
        hours: quantity('duration', 'Expected engine hours', '60 h', { min: 0, max: 8760 }).optional(),
      })
      .meta({ description: 'Expected use in the coming season' })
      .optional(),
    battery: z
      .union([z.literal('none'), battery])
      .meta({ description: 'The battery, or none', examples: [{ chemistry: 'agm', capacity: '12 Ah' }] })
      .optional(),
    fuel: z
      .union([z.literal('none'), fuel])
      .meta({ description: 'Fuel, or none', examples: [{ delivery: 'carburettor', tank: '17 L' }] })
      .optional(),
    cooling: cooling
      .meta({ description: 'air, oil, liquid or none; or a group with the coolant', examples: ['air'] })
      .optional(),
    engine: engine.optional(),
    tyres: list(tyre, 'Tyres, one entry for each position; an empty list for none', 20).optional(),
    chassis: chassis.optional(),
    roadSalt: z
      .strictObject({
        exposed: flag('Used on salted roads, or handles road salt').optional(),
        washed: flag('Washed before it is put away').optional(),
      })
      .meta({ description: 'Road salt', examples: [{ exposed: true, washed: true }] })
      .optional(),
    services: services.optional(),
    paperwork: paperwork.optional(),
    assemblies: assemblies.optional(),
    jobs: jobs.optional(),
    asLeft: asLeft.optional(),
    readings: readings.optional(),
    charged: charged.optional(),
    done: done.optional(),
    skipped: skipped.optional(),
    notes: notes.optional(),
    remarks: paragraph('Anything else; shown nowhere', 'Bought from a neighbour').optional(),
  })
  .meta({ title: 'Machine', description: 'One vehicle: machines/<id>.yaml' });

export type MachineFile = z.output<typeof machine>;
