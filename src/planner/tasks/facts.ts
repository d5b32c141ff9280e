import { isOutOfReach } from '../battery/index.ts';
import { addDays, daysBetween } from '../dates.ts';
import type { Household, Machine, Place } from '../household.ts';
import { restLength } from '../rest-length.ts';
import type { PlanParts } from './parts.ts';
import type { Facts } from './when.ts';

/** Service ids that stand for a change of engine oil. */
const OIL_SERVICES = ['engine-oil', 'oil', 'oil-change', 'oil-and-filter'];

/** An oil change this recent makes another one at lay-up needless. Source: common practice. */
const FRESH_OIL_DAYS = 60;

/** One machine is laid up as another starts up when their dates are this near. Source: common practice. */
const SWAP_DAYS = 21;

/**
 * The facts of one machine that a procedure's `when:` is matched against; FACTS in fact-table.ts says what each means.
 * @param machine - the machine
 * @param place - where it rests
 * @param household - whose machine it is
 * @param parts - what the calculations found
 * @returns nested plain values; a fact about a thing the machine has not is "none" or false
 */
export function machineFacts(machine: Machine, place: Place, household: Household, parts: PlanParts): Facts {
  const { engine, driveBattery, fuel, cooling, chassis, roadSalt } = machine;
  return {
    kind: machine.kind,
    use: machine.use,
    rest: restLength(machine.season),
    swap: startingMachine(machine, household) !== undefined,
    engine: {
      cycle: engine.cycle,
      electricStart: engine.start.includes('electric'),
      handStart: engine.start !== 'electric',
      oil: engine.oilL > 0,
      oilFilter: engine.oilFilter,
      oilChange: oilChange(machine, parts),
      twoStrokeOil: engine.twoStrokeOil ?? 'none',
    },
    fuel: {
      present: fuel !== undefined,
      delivery: fuel?.delivery ?? 'none',
      choice: parts.fuel?.choice ?? 'none',
      room: roomFact(parts),
      tap: fuel?.taps?.kind ?? 'none',
      twoTaps: (fuel?.taps?.count ?? 0) > 1,
      bowls: (fuel?.bowls ?? 0) > 0,
      premix: fuel?.premix ?? false,
      tank: fuel?.tankMaterial ?? 'none',
      lined: fuel?.lined ?? false,
      stabiliser: (parts.fuel?.doseML ?? 0) > 0,
      spring: parts.fuel?.atFirstUse.verdict ?? 'none',
      drainedOld: parts.fuel?.drainedOld ?? false,
    },
    battery: batteryFacts(machine, place, parts),
    driveBattery: {
      present: driveBattery !== undefined,
      chemistry: driveBattery?.chemistry ?? 'none',
      removable: driveBattery?.removable ?? false,
      outOfReach: driveBattery !== undefined && isOutOfReach(driveBattery, place),
    },
    cooling: { kind: cooling.kind },
    coolant: coolantFacts(machine, parts),
    chassis: {
      drive: chassis.drive,
      brakes: chassis.brakes,
      brakeFluid: chassis.brakeFluid ?? 'none',
      clutch: chassis.clutch,
      throttle: chassis.throttle,
      offGround: chassis.offGround,
      skis: chassis.skis,
      track: chassis.track,
      greasePoints: chassis.greasePoints > 0,
      centreStand: chassis.centreStand,
      airbox: chassis.airbox,
      exhaust: chassis.exhaustOutlets > 0,
      lights: chassis.hasLights,
    },
    tyres: {
      present: machine.tyres.length > 0,
      raised: parts.tyres.some((tyre) => tyre.setKPa > tyre.normalKPa),
    },
    roadSalt: { exposed: roadSalt.exposed, washed: roadSalt.washed },
    place: {
      power: place.power,
      rodents: place.rodents,
      bench: place.bench,
      open: place.enclosure.timeConstantH === 0,
    },
    household: {
      batteryRoom: household.batteryRoom !== undefined,
      stand: household.stands.some((stand) => stand.kinds.includes(machine.kind)),
    },
    corrosion: {
      film: parts.corrosion.protection.level >= 2,
      fog: parts.corrosion.protection.level >= 3,
      bag: parts.corrosion.desiccant !== undefined,
      dry: parts.corrosion.dehumidifierRhPct !== undefined,
    },
    services: { due: parts.services.some((service) => service.pulledIn) },
    paperwork: {
      insurance: machine.paperwork.some((paper) => paper.kind === 'insurance'),
      registration: machine.paperwork.some((paper) => paper.kind === 'registration'),
      inspection: machine.paperwork.some((paper) => paper.kind === 'inspection'),
      paused: machine.paperwork.some((paper) => paper.pausedOverRest),
    },
  };
}

/**
 * The machine that starts up as this one is laid up, if there is one; the nearest in date, then by id.
 * @param machine - the one that is laid up
 * @param household - with all machines
 */
export function startingMachine(machine: Machine, household: Household): Machine | undefined {
  const gap = (other: Machine) => Math.abs(daysBetween(machine.season.lastUse, other.season.firstUse));
  return household.machines
    .filter((other) => other.id !== machine.id && gap(other) <= SWAP_DAYS)
    .sort((a, b) => gap(a) - gap(b) || (a.id < b.id ? -1 : 1))[0];
}

function oilChange(machine: Machine, parts: PlanParts): 'advised' | 'fresh' | 'none' {
  if (!(machine.engine.oilL > 0)) return 'none';
  const since = addDays(machine.season.lastUse, -FRESH_OIL_DAYS);
  const fresh = machine.services.some(
    (item) =>
      OIL_SERVICES.includes(item.id) &&
      (item.lastDone?.date ?? '') >= since &&
      !parts.services.some((due) => due.id === item.id && due.pulledIn),
  );
  return fresh ? 'fresh' : 'advised';
}

/** Less is not worth a can [L]. */
const LEAST_FILL_L = 0.05;

function roomFact({ fuel }: PlanParts): 'add' | 'full' | 'over' | 'none' {
  if (fuel?.choice !== 'fill') return 'none';
  if (fuel.drawOffL) return 'over';
  return (fuel.addL ?? 0) >= LEAST_FILL_L ? 'add' : 'full';
}

function batteryFacts(machine: Machine, place: Place, parts: PlanParts): Facts {
  const { battery } = machine;
  const plan = parts.battery;
  const chemistry = battery?.chemistry ?? 'none';
  const family = chemistry.startsWith('flooded') ? 'flooded' : chemistry === 'lifepo4' ? 'lithium' : 'sealed';
  return {
    present: battery !== undefined,
    // Without electricity a maintainer keeps nothing: the battery is charged as on visits.
    care: plan?.care === 'maintainer' && !place.power ? 'visits' : (plan?.care ?? 'none'),
    chemistry,
    family: battery ? family : 'none',
    connected: plan?.connected ?? false,
    keptAt: plan?.keptAt ?? 'none',
    removable: battery?.removable ?? false,
    awayToCharge: plan?.keptAt === 'machine' && battery?.removable === true && !place.power,
    outOfReach: plan?.keptAt === 'machine' && battery !== undefined && isOutOfReach(battery, place),
    charges: (plan?.charges.length ?? 0) > 0,
  };
}

function coolantFacts(machine: Machine, parts: PlanParts): Facts {
  const { coolant } = machine.cooling;
  const plan = coolant ? parts.coolant : undefined;
  const enough = plan === undefined ? 'none' : plan.enough === null ? 'unknown' : plan.enough ? 'yes' : 'no';
  return {
    present: plan !== undefined,
    known: coolant?.strength !== undefined,
    enough,
    swap: (plan?.replaceL ?? 0) > 0,
    old: plan?.ageDue !== undefined && plan.ageDue <= machine.season.firstUse,
  };
}
