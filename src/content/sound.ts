/** What of a file is sound where some of it is not: for checks across fields and files, never for planning. */
import type * as z from 'zod/mini';
import { formOf } from './schema-walk.ts';

/** A value of which any part may have been refused. Entries of a list keep their places. */
export type Known<T> = T extends readonly (infer E)[]
  ? readonly (Known<E> | undefined)[]
  : T extends object
    ? { readonly [K in keyof T]?: Known<T[K]> | undefined }
    : T;

/**
 * The sound part of plain data.
 * @param schema - of the whole
 * @param data - as the file has it
 * @returns each field and entry that is sound by itself; undefined for what is not, and for fields in several forms of groups
 */
export function soundPart<S extends z.ZodMiniType>(schema: S, data: unknown): Known<z.output<S>> | undefined {
  return partOf(schema, data) as Known<z.output<S>> | undefined;
}

function partOf(schema: z.ZodMiniType, data: unknown): unknown {
  const whole = schema.safeParse(data);
  if (whole.success) return whole.data;
  const { shape, element, innerType, options } = formOf(schema);
  if (innerType) return partOf(innerType, data);
  if (options) {
    const groups = options.filter((option) => formOf(option).shape);
    return groups.length === 1 ? partOf(groups[0]!, data) : undefined;
  }
  if (Array.isArray(data)) return element && data.map((entry) => partOf(element, entry));
  if (!shape || typeof data !== 'object' || data === null) return undefined;
  const fields = data as Record<string, unknown>;
  const kept = Object.entries(shape).filter(([name]) => Object.hasOwn(fields, name));
  return Object.fromEntries(kept.map(([name, field]) => [name, partOf(field, fields[name])]));
}

/** Entries of a list that are known, with their places in it. */
export function knownEntries<T>(list: readonly (T | undefined)[] | undefined): [place: number, entry: T][] {
  return (list ?? []).flatMap((entry, i): [number, T][] => (entry === undefined ? [] : [[i, entry]]));
}
