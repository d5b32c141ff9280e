/** What a schema says of one of its fields: where it is, its example, whether it is needed. */
import * as z from 'zod/mini';
import type { Path } from './path.ts';

/** What a schema is made of; what it is not made of is absent. */
interface Form {
  type: string;
  shape?: Record<string, z.ZodMiniType>;
  element?: z.ZodMiniType;
  innerType?: z.ZodMiniType;
  in?: z.ZodMiniType;
  options?: z.ZodMiniType[];
  items?: z.ZodMiniType[];
}

export function formOf(schema: z.ZodMiniType): Form {
  return schema.def as unknown as Form;
}

/** The schema at a path of the data; the first form that has the path, where there are several. */
export function schemaAt(schema: z.ZodMiniType, path: Path): z.ZodMiniType | undefined {
  const d = formOf(schema);
  if (d.options && path.length > 0) {
    for (const option of d.options) {
      const found = schemaAt(option, path);
      if (found) return found;
    }
    return undefined;
  }
  if (d.innerType) return schemaAt(d.innerType, path);
  if (d.type === 'pipe' && d.in && path.length > 0) return schemaAt(d.in, path);
  if (path.length === 0) return schema;
  const [head, ...rest] = path;
  const next =
    d.shape && typeof head === 'string'
      ? d.shape[head]
      : typeof head === 'number'
        ? (d.items?.[head] ?? d.element)
        : undefined;
  return next ? schemaAt(next, rest) : undefined;
}

/** Names of the fields that a group may have, in all of its forms. */
export function keysOf(schema: z.ZodMiniType | undefined): string[] {
  if (!schema) return [];
  const d = formOf(schema);
  if (d.shape) return Object.keys(d.shape);
  if (d.options) return [...new Set(d.options.flatMap(keysOf))];
  return d.innerType ? keysOf(d.innerType) : [];
}

/** A field's own example, as a file has it. */
export function exampleOf(schema: z.ZodMiniType | undefined): string | undefined {
  const meta = schema && z.globalRegistry.get(schema);
  const example = (meta?.examples as unknown[] | undefined)?.[0];
  if (example === undefined) return groupExample(schema) ?? listExample(schema);
  if (typeof example === 'string') return /^\d{4}-|^[\d.]+$|[:#{}[\]]/.test(example) ? `"${example}"` : example;
  return JSON.stringify(example).replaceAll('"', '').replaceAll(',', ', ').replaceAll(':', ': ');
}

/** The fields that a group cannot do without, each with its example; of one that needs none, the first that has an example. */
function groupExample(schema: z.ZodMiniType | undefined): string | undefined {
  const shape = schema && formOf(schema).shape;
  if (!shape) return undefined;
  const fields = Object.entries(shape);
  const needed = fields.filter(([, field]) => formOf(field).type !== 'optional');
  const some = needed.length > 0 ? needed : fields.filter(([name]) => exampleOf(schemaAt(schema, [name]))).slice(0, 1);
  const written = some.map(([name]) => `${name}: ${exampleOf(schemaAt(schema, [name])) ?? '…'}`);
  return written.length === 0 ? undefined : `{ ${written.join(', ')} }`;
}

/** A list of one entry. */
function listExample(schema: z.ZodMiniType | undefined): string | undefined {
  const element = schema && formOf(schema).element;
  const entry = element && exampleOf(element);
  return entry && `[${entry}]`;
}

/** "Write it like …", by the field's own example, or by that of the list it stands in. */
export function writeLike(root: z.ZodMiniType, path: Path): string {
  const schema = schemaAt(root, path);
  const example = exampleOf(schema);
  const last = path.at(-1);
  if (example !== undefined) return `Write it like ${typeof last === 'string' ? `${last}: ` : ''}${example}.`;
  if (typeof last === 'number') return writeLike(root, path.slice(0, -1));
  return schema && formOf(schema).element ? 'Put its entries below it, each behind a dash.' : 'Correct it.';
}

/** False where the field may be left out, or the group that it stands in has no such field. */
export function isNeeded(root: z.ZodMiniType, path: Path): boolean {
  const group = schemaAt(root, path.slice(0, -1));
  const field = group && formOf(group).shape?.[String(path.at(-1))];
  return field !== undefined && formOf(field).type !== 'optional';
}

export interface FieldPlace {
  name: string;
  form: 'list' | 'group' | 'value';
  /** The groups around it from the outermost; "[]" behind a list. */
  home: readonly string[];
}

/** Every field of a schema at any depth. */
export function fieldsOf(schema: z.ZodMiniType, home: readonly string[] = []): FieldPlace[] {
  const { shape, element, innerType, options } = formOf(schema);
  if (innerType) return fieldsOf(innerType, home);
  return [
    ...Object.entries(shape ?? {}).flatMap(([name, of]) => [
      { name, form: formOfField(of), home },
      ...fieldsOf(of, [...home, name]),
    ]),
    ...(element ? fieldsOf(element, [...home.slice(0, -1), `${home.at(-1)}[]`]) : []),
    ...(options ?? []).flatMap((option) => fieldsOf(option, home)),
  ];
}

function formOfField(schema: z.ZodMiniType): 'list' | 'group' | 'value' {
  const { shape, element, innerType, options } = formOf(schema);
  if (innerType) return formOfField(innerType);
  if (element && formOf(element).shape) return 'list';
  return shape || options?.some((option) => formOf(option).shape) ? 'group' : 'value';
}
