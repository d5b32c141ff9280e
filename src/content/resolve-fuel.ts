/** Fuel and cooling as written, completed with the kind's presets. */
import { strengthFor, tableEnd } from '../planner/coolant/strength.ts';
import type { Cooling, Engine, Fuel, Machine } from '../planner/household.ts';
import type { Assumptions } from './assume.ts';
import { DENSITY_PRESETS } from './presets.ts';
import type { MachineFile } from './schemas/machine.ts';

/** The machine's fuel, or undefined where it has none. */
export function resolveFuel(
  raw: MachineFile,
  kind: Machine['kind'],
  engine: Engine,
  assume: Assumptions,
): Fuel | undefined {
  if (raw.fuel === 'none' || (raw.fuel === undefined && engine.cycle === 'electric')) return undefined;
  const f = raw.fuel ?? {};
  const delivery = assume.fill<Fuel['delivery']>(f.delivery, 'fuel.delivery', 'fuel.delivery');
  const tankL = assume.fillNumber(f.tank, 'fuel.tank', 'fuel.tankL');
  const blend = assume.fill<Fuel['blend']>(f.blend, 'fuel.blend', 'fuel.blend');
  const bowls = f.bowls ?? assumedBowls(delivery, kind, engine.cylinders, assume);
  const density = DENSITY_PRESETS[blend]!;
  return {
    delivery,
    tankL,
    inTankL:
      f.inTank ??
      assume.number({
        field: 'fuel.inTank',
        target: 'fuel.inTankL.value',
        unit: 'L',
        range: [round(tankL * 0.5), round(tankL * 0.15), round(tankL * 0.95)],
        reason: 'not given: half a tank (common practice)',
      }),
    blend,
    tankMaterial: assume.fill<Fuel['tankMaterial']>(f.tankMaterial, 'fuel.tankMaterial', 'fuel.tankMaterial'),
    lined: assume.fill<boolean>(f.lined, 'fuel.lined', 'fuel.lined'),
    taps: resolveTaps(f.tap, f.taps, delivery, kind, assume),
    bowls,
    lineAndBowlsL:
      f.lineAndBowls ??
      assume.number({
        field: 'fuel.lineAndBowls',
        target: 'fuel.lineAndBowlsL',
        unit: 'L',
        range:
          delivery === 'injection'
            ? [0.3, 0.15, 0.8]
            : [round(0.1 + 0.06 * bowls), round(0.05 + 0.03 * bowls), round(0.2 + 0.12 * bowls)],
        reason:
          delivery === 'injection'
            ? 'line, filter and rail (common practice)'
            : 'line and filter 0.1 L, each bowl 0.06 L (common practice)',
      }).value,
    boughtOn: f.boughtOn,
    premix: f.premix ?? engine.twoStrokeOil === 'premix',
    choice: f.choice,
    densityKgM3:
      f.densityKgPerM3 ??
      assume.number({
        field: 'fuel.densityKgPerM3',
        target: 'fuel.densityKgM3',
        unit: 'kg/m³',
        range: density,
        reason: `limits of petrol at 15 °C, ${blend} (EN 228:2012, from memory)`,
        settle: `fuel: { densityKgPerM3: ${density[0]} }`,
      }).value,
  };
}

function round(litres: number): number {
  return Math.round(litres * 100) / 100;
}

function assumedBowls(
  delivery: Fuel['delivery'],
  kind: Machine['kind'],
  cylinders: number,
  assume: Assumptions,
): number {
  if (delivery === 'injection') return 0;
  const shared = ['car', 'tractor', 'mower'].includes(kind);
  const bowls = shared ? 1 : Math.max(1, cylinders);
  return assume.number({
    field: 'fuel.bowls',
    target: 'fuel.bowls',
    unit: '',
    range: [bowls, 1, Math.max(1, cylinders)],
    reason: `${shared ? 'one carburettor' : 'one carburettor for each cylinder'} (common practice)`,
  }).value;
}

function resolveTaps(
  tap: 'vacuum' | 'manual' | 'none' | undefined,
  count: number | undefined,
  delivery: Fuel['delivery'],
  kind: Machine['kind'],
  assume: Assumptions,
): Fuel['taps'] {
  let which = tap;
  if (which === undefined) {
    if (count !== undefined) which = 'manual';
    else if (delivery === 'injection') return null;
    else which = kind === 'motorcycle' || kind === 'scooter' ? 'vacuum' : kind === 'car' ? 'none' : 'manual';
    assume.word({
      field: 'fuel.tap',
      target: 'fuel.taps.kind',
      range: [which, 'vacuum', 'manual'],
      unit: '',
      reason: 'usual for this kind with carburettor (common practice)',
    });
  }
  return which === 'none' ? null : { kind: which, count: count ?? 1 };
}

/** The cooling and, where it is liquid, the coolant. */
export function resolveCooling(raw: MachineFile, engine: Engine, assume: Assumptions): Cooling {
  const c: Exclude<MachineFile['cooling'], string | undefined> =
    typeof raw.cooling === 'string' ? { kind: raw.cooling } : (raw.cooling ?? {});
  if (raw.cooling === undefined && engine.cycle === 'electric') return { kind: 'none' };
  // Whoever writes of coolant has told that there is some.
  const kind =
    c.kind ??
    (raw.cooling === undefined ? assume.fill<Cooling['kind']>(undefined, 'cooling.kind', 'cooling.kind') : 'liquid');
  if (kind !== 'liquid') return { kind };
  const volumeL = assume.fillNumber(c.volume, 'cooling.volume', 'cooling.coolant.volumeL');
  const glycol = c.glycol ?? assumedGlycol(assume);
  return {
    kind,
    coolant: {
      glycol,
      strength: c.freezesAt === undefined ? assumedStrength(c.strength, assume) : testedStrength(glycol, c.freezesAt),
      volumeL,
      drainableL:
        c.drainable ??
        assume.number({
          field: 'cooling.drainable',
          target: 'cooling.coolant.drainableL',
          unit: 'L',
          range: [round(volumeL * 0.75), round(volumeL * 0.5), round(volumeL)],
          reason: 'a drain plug leaves about a quarter in the system (common practice)',
        }).value,
      refillStrength:
        c.refillStrength === undefined
          ? assume.number({
              field: 'cooling.refillStrength',
              target: 'cooling.coolant.refillStrength',
              unit: '%',
              kept: 'share',
              range: [100, 50, 100],
              reason: 'concentrate; what is sold ready mixed is 50 % (common practice)',
            }).value
          : c.refillStrength / 100,
      lastChanged: c.lastChanged,
      lifeYears:
        c.life === undefined
          ? assume.number({
              field: 'cooling.life',
              target: 'cooling.coolant.lifeYears',
              unit: 'months',
              kept: 'years',
              range: [36, 24, 60],
              reason: 'two to five years, by the inhibitors it has (common practice)',
            }).value
          : c.life / 12,
    },
  };
}

function assumedGlycol(assume: Assumptions): 'ethylene' | 'propylene' {
  return assume.word({
    field: 'cooling.glycol',
    target: 'cooling.coolant.glycol',
    range: ['ethylene', 'ethylene', 'propylene'],
    unit: '',
    reason: 'most coolants are ethylene glycol (common practice)',
  }) as 'ethylene' | 'propylene';
}

/** The strength that freezes where the tester showed it; colder than the table goes, its strongest. */
function testedStrength(glycol: 'ethylene' | 'propylene', freezesAtC: number): number {
  return strengthFor(glycol, freezesAtC) ?? tableEnd(glycol).strength;
}

/** Unknown strength stays unknown: the plan asks for a test, and this names the range that a test could show. */
function assumedStrength(strength: number | 'unknown' | undefined, assume: Assumptions): number | undefined {
  if (typeof strength === 'number') return strength / 100;
  assume.list.push({
    field: 'cooling.strength',
    target: 'cooling.coolant.strength',
    value: 'unknown',
    low: 0.25,
    high: 0.6,
    unit: 'share',
    reason: 'nobody knows until it is tested: old coolant may have been topped up with water (common practice)',
    settle: 'cooling: { strength: 50 % }',
  });
  return undefined;
}
