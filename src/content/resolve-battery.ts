/** The battery as written, completed with its chemistry's figures and the kind's presets. */
import { chemistryRow } from '../planner/battery/chemistries.ts';
import type { Battery, BatteryChemistry, Machine, Ranged } from '../planner/household.ts';
import type { Assumptions } from './assume.ts';
import { DRAIN_PRESETS } from './presets.ts';
import type { MachineFile } from './schemas/machine.ts';

/** A battery is taken to have lost capacity from its fourth year on; common practice. */
const OLD_FROM_YEAR = 3;

const triple = (r: Ranged): [number, number, number] => [r.value, r.low, r.high];

const share = (r: Ranged | undefined): Ranged | undefined =>
  r && { value: r.value / 100, low: r.low / 100, high: r.high / 100 };

/**
 * The machine's battery, or undefined where it has none.
 * @param raw - the machine's file
 * @param given - what of the machine is already settled
 * @param restBegins - the last day of use, for the battery's age
 */
export function resolveBattery(
  raw: MachineFile,
  given: { kind: Machine['kind']; electric: boolean; injected: boolean; electricStart: boolean; restBegins: string },
  assume: Assumptions,
): Battery | undefined {
  if (raw.battery === 'none') return undefined;
  if (raw.battery === undefined && !(assume.preset('battery.present').value || given.electricStart)) {
    if (given.electric)
      assume.word({
        field: 'battery',
        target: 'battery',
        range: ['none', 'none', 'none'],
        unit: '',
        reason:
          'an electric machine of this kind usually has no 12 V battery beside its drive battery (common practice)',
      });
    return undefined;
  }
  const b = raw.battery ?? {};
  const chemistry = resolveChemistry(b.chemistry, assume);
  const row = chemistryRow(chemistry);
  const reason = `row of ${row.name}: ${row.sources.join('; ')}`;
  const memoryCircuits = b.memoryCircuits ?? (given.kind === 'car' || given.injected || given.electric);
  if (b.memoryCircuits === undefined) {
    const word = memoryCircuits ? 'true' : 'false';
    assume.list.push({
      field: 'battery.memoryCircuits',
      target: 'battery.memoryCircuits',
      value: word,
      low: word,
      high: word,
      unit: '',
      reason: given.electric
        ? 'an electric machine keeps a control unit alive (common practice)'
        : 'cars and injected engines keep a clock or a control unit alive (common practice)',
      settle: `battery: { memoryCircuits: ${word} }`,
    });
  }
  return {
    chemistry,
    capacityAh: assume.fillNumber(b.capacity, 'battery.capacity', 'battery.capacityAh'),
    health: share(b.health) ?? assumedHealth(b.boughtYear, given.restBegins, assume),
    selfDischargePctPerMonth:
      b.selfDischarge ??
      assume.number({
        field: 'battery.selfDischarge',
        target: 'battery.selfDischargePctPerMonth.value',
        range: triple(row.selfDischargePctPerMonth),
        unit: '%',
        reason,
      }),
    doublingK:
      b.doubling ??
      assume.number({
        field: 'battery.doubling',
        target: 'battery.doublingK.value',
        range: triple(row.doublingK),
        unit: 'K',
        reason,
      }),
    drainMA: b.drain ?? assumedDrain(given.kind, memoryCircuits, assume),
    startPct: b.chargeAtLayUp ?? assumedStart(chemistry, assume),
    care: b.care,
    connected: b.connected,
    removable: assume.fill<boolean>(b.removable, 'battery.removable', 'battery.removable'),
    boughtYear: b.boughtYear,
    memoryCircuits,
  };
}

function assumedStart(chemistry: BatteryChemistry, assume: Assumptions): Ranged {
  const [field, target] = ['battery.chargeAtLayUp', 'battery.startPct'];
  if (chemistry !== 'lifepo4') return assume.fillRange(undefined, field, target);
  const reason = 'the lay-up brings it to 50 to 60 %, at which it ages least (common practice)';
  return assume.number({ field, target, range: [55, 50, 60], unit: '%', reason });
}

function resolveChemistry(
  name: NonNullable<Exclude<MachineFile['battery'], 'none' | undefined>>['chemistry'],
  assume: Assumptions,
): BatteryChemistry {
  if (name === undefined) return assume.fill<BatteryChemistry>(undefined, 'battery.chemistry', 'battery.chemistry');
  if (name !== 'flooded') return name;
  assume.word({
    field: 'battery.chemistry',
    target: 'battery.chemistry',
    range: ['flooded-antimony', 'flooded-calcium', 'flooded-antimony'],
    unit: '',
    reason: '"flooded" does not say which alloy the plates are made of; antimony loses faster, so it is taken',
  });
  return 'flooded-antimony';
}

function assumedHealth(bought: number | undefined, restBegins: string, assume: Assumptions): Ranged {
  const old = bought !== undefined && Number(restBegins.slice(0, 4)) - bought >= OLD_FROM_YEAR;
  const reason = old
    ? `bought in ${bought}, in its fourth year or older (common practice)`
    : bought === undefined
      ? 'age not given: taken as sound (common practice)'
      : `bought in ${bought} (common practice)`;
  return assume.number({
    field: 'battery.health',
    target: 'battery.health.value',
    unit: '%',
    kept: 'share',
    reason,
    range: old ? [85, 60, 95] : bought === undefined ? [100, 70, 100] : [100, 90, 100],
  });
}

function assumedDrain(kind: Machine['kind'], memory: boolean, assume: Assumptions): Ranged {
  const found = DRAIN_PRESETS.find((r) => r.memory === memory && r.kinds.includes(kind))!;
  return assume.number({
    field: 'battery.drain',
    target: 'battery.drainMA.value',
    range: found.values,
    unit: 'mA',
    reason: `${found.when} (common practice, from memory); a meter in series at the negative lead tells`,
  });
}
