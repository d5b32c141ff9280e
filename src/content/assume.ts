/** Fills what a machine's file leaves out, and keeps the list of what was filled in. */
import type { AssumedField, MachineKind, Ranged } from '../planner/household.ts';
import { type Preset, preset } from './presets.ts';

interface Assume {
  /** As written in content. */
  field: string;
  /** Path in `Machine`, or in `Place` with "place." before it. */
  target: string;
  /** Value, low, high: in the unit as content writes it. */
  range: readonly [number, number, number] | readonly [string, string, string];
  unit: string;
  reason: string;
  /** What the planner keeps of it, where content writes it otherwise: a share for percent, years for months. */
  kept?: keyof typeof KEPT;
  /** The line to write, where it is not the field with the value. */
  settle?: string;
}

/** From the unit of content to the planner's. */
const KEPT = { share: 1 / 100, years: 1 / 12 };

export class Assumptions {
  readonly list: AssumedField[] = [];
  private readonly kind: MachineKind;
  private readonly electric: boolean;

  /**
   * @param kind - whose presets are taken
   * @param electric - an electric machine of that kind, which has some of its own
   */
  constructor(kind: MachineKind, electric = false) {
    this.kind = kind;
    this.electric = electric;
  }

  /** What the machine is taken to have where its file is silent. */
  preset(field: string): ReturnType<typeof preset> {
    return preset(field, this.kind, this.electric);
  }

  /** Lists one value and returns it, in the planner's unit. */
  number(a: Assume & { range: readonly [number, number, number] }): Ranged {
    const factor = a.kept === undefined ? 1 : KEPT[a.kept];
    const [value, low, high] = a.range.map((v) => v * factor) as [number, number, number];
    this.list.push(entry(a, value, low, high));
    return { value, low, high };
  }

  word(a: Assume & { range: readonly [string, string, string] }): string {
    const [value, low, high] = a.range;
    this.list.push(entry(a, value, low, high));
    return value;
  }

  /** The given value, or the preset's, listed. */
  fill<T extends string | number | boolean>(given: T | undefined, field: string, target: string): T {
    if (given !== undefined) return given;
    const row = this.preset(field);
    const [value, low, high] = spread(row.value);
    const common = { field, target, unit: row.unit, reason: row.reason };
    this.list.push(entry({ ...common, range: [value, low, high] as [string, string, string] }, value, low, high));
    return (typeof row.value === 'boolean' ? row.value : value) as T;
  }

  /** The given number, or the preset's, listed. */
  fillNumber(given: number | undefined, field: string, target: string): number {
    if (given !== undefined) return given;
    const row = this.preset(field);
    return this.number({
      field,
      target,
      range: row.value as [number, number, number],
      unit: row.unit,
      reason: row.reason,
    }).value;
  }

  /** The given range, or the preset's, listed. */
  fillRange(given: Ranged | undefined, field: string, target: string): Ranged {
    if (given) return given;
    const row = this.preset(field);
    return this.number({
      field,
      target: `${target}.value`,
      range: row.value as [number, number, number],
      unit: row.unit,
      reason: row.reason,
    });
  }
}

function spread(value: Preset): [number | string, number | string, number | string] {
  if (typeof value === 'object') return [value[0], value[1], value[2]];
  if (typeof value === 'boolean') return [yesNo(value), yesNo(value), yesNo(value)];
  return [value, value, value];
}

function yesNo(value: boolean): string {
  return value ? 'true' : 'false';
}

function entry(a: Assume, value: number | string, low: number | string, high: number | string): AssumedField {
  return {
    field: a.field,
    target: a.target,
    value,
    low,
    high,
    unit: a.kept ?? a.unit,
    reason: a.reason,
    settle: a.settle ?? settleLine(a.field, `${a.range[0]}${a.unit === '' ? '' : ` ${a.unit}`}`),
  };
}

/**
 * The line that settles a field, as it may stand in the file: `battery: { drain: 3 mA }`.
 * @param field - with dots: "battery.drain"
 * @param text - the value as content writes it
 */
export function settleLine(field: string, text: string): string {
  let inner = /^\d{4}-\d{2}-\d{2}$/.test(text) ? `"${text}"` : text;
  const [head, ...rest] = field.split('.');
  for (const key of rest.reverse()) inner = `{ ${key}: ${inner} }`;
  return `${head}: ${inner}`;
}
