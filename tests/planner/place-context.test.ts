import { expect, test } from 'vitest';
import { dailyCurves, normalsOf } from '../../src/planner/climate/index.ts';
import type { MachineKind } from '../../src/planner/household.ts';
import { placeContext, placePlan } from '../../src/planner/place-context.ts';
import { place } from './fluids/fixture.ts';

test('the weather of a place is worked out once, for another seed or another place anew', () => {
  const shed = place();
  const context = placeContext(shed, 1);
  expect(placeContext(shed, 1)).toBe(context);
  expect(placeContext(shed, 2)).not.toBe(context);
  expect(placeContext({ ...shed }, 1)).not.toBe(context);
});

test('kinds of machines share the air where their heaviest metal is the same', () => {
  const { airFor } = placeContext(place(), 1);
  const light: MachineKind[] = ['motorcycle', 'scooter', 'mower'];
  const middle: MachineKind[] = ['snow-machine', 'quad', 'side-by-side'];
  const heavy: MachineKind[] = ['car', 'tractor'];
  for (const kinds of [light, middle, heavy]) expect(new Set(kinds.map(airFor)).size).toBe(1);
  expect(new Set([light, middle, heavy].map(([kind]) => airFor(kind!))).size).toBe(3);
  // The heavier it is, the longer it stays colder than air that turns warm, and the longer it is wet.
  const wetHours = (kind: MachineKind) => airFor(kind).months.reduce((sum, month) => sum + month.condensationHours, 0);
  expect(wetHours('car')).toBeGreaterThan(wetHours('motorcycle'));
});

test('another enclosure is tried once, and keeps the cold of the night out where it has more of it to keep', () => {
  const shed = place();
  const { storeFor, store, designLow } = placeContext(shed, 1);
  const heated = { ...shed.enclosure, houseCoupling: 0.9 };
  expect(storeFor({ ...heated })).toBe(storeFor(heated));
  expect(storeFor(heated).store).not.toEqual(store);
  expect(Math.min(...storeFor(heated).designLow.designC)).toBeGreaterThan(Math.min(...designLow.designC));
  expect(storeFor(shed.enclosure)).toEqual({ store, designLow });
});

test('pages are told no more of a place than they show: its name and its air outdoors, a point each ten days', () => {
  const shed = place({ power: true, station: { name: 'Airport', distanceKm: 12 } as never });
  const plan = placePlan(placeContext(shed, 1));
  const { meanC } = dailyCurves(normalsOf(shed.climate));
  expect(plan).toEqual({
    id: 'shed',
    name: 'Tin shed',
    enclosure: 'thin-metal-shed',
    power: true,
    station: { name: 'Airport', distanceKm: 12 },
    outdoorC: normalsOf(shed.climate).meanC,
    outdoorTenDayC: Array.from(meanC).filter((_, day) => day % 10 === 0),
    climateSource: 'invented',
    attribution: '',
  });
});
