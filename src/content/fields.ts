/** The field reference and the editors' schemas, made from the same zod schemas that the reader uses. */
import * as z from 'zod/mini';
import { climate } from './schemas/climate.ts';
import { household } from './schemas/household.ts';
import { machine } from './schemas/machine.ts';
import { place } from './schemas/place.ts';
import { procedureSchema } from './schemas/procedure.ts';
import { record } from './schemas/record.ts';

/** Every kind of content file, with where it stands. */
export const KINDS_OF_FILES = {
  household: { schema: household, path: 'household.yaml' },
  place: { schema: place, path: 'places/<id>.yaml' },
  climate: { schema: climate, path: 'climates/<id>.yaml' },
  machine: { schema: machine, path: 'machines/<id>.yaml' },
  record: { schema: record, path: 'records/<machine>/<name>.yaml' },
  procedure: { schema: procedureSchema, path: 'procedures/<id>.yaml' },
} as const;

/** The kind of file that a path in the content folder is. */
export function kindOfFile(path: string): FileKind {
  const folder = path.split('/')[0]!;
  const kinds = Object.keys(KINDS_OF_FILES) as FileKind[];
  return kinds.find((kind) => KINDS_OF_FILES[kind].path.startsWith(`${folder}/`)) ?? 'household';
}

export type FileKind = keyof typeof KINDS_OF_FILES;

/**
 * The JSON Schema of one kind of file, for editors: what a person writes, not what the planner gets.
 * Source: JSON Schema draft 2020-12.
 */
export function editorSchema(kind: FileKind): Record<string, unknown> {
  return z.toJSONSchema(KINDS_OF_FILES[kind].schema, {
    io: 'input',
    target: 'draft-2020-12',
    // Examples are of what is written; left to itself the library drops them where a value is changed on reading.
    override: ({ zodSchema, jsonSchema }) => {
      const examples = z.globalRegistry.get(zodSchema)?.examples;
      if (Array.isArray(examples)) jsonSchema.examples = examples;
    },
  }) as Record<string, unknown>;
}

export interface FieldRow {
  /** "battery.capacity", "tyres[].pressure". */
  field: string;
  required: boolean;
  meaning: string;
  /** Words it can be, or "text", "number", "yes or no", "list", "group". */
  form: string;
  example: string;
}

interface JsonSchema {
  type?: string;
  description?: string;
  examples?: unknown[];
  properties?: Record<string, JsonSchema>;
  required?: string[];
  items?: JsonSchema;
  anyOf?: JsonSchema[];
  enum?: unknown[];
  const?: unknown;
}

/** Every field of one kind of file, in the order of the schema. */
export function fieldRows(kind: FileKind): FieldRow[] {
  return rowsOf(editorSchema(kind) as JsonSchema, '');
}

function rowsOf(schema: JsonSchema, prefix: string): FieldRow[] {
  return Object.entries(schema.properties ?? {}).flatMap(([name, field]) => {
    const path = `${prefix}${name}`;
    const row: FieldRow = {
      field: path,
      required: schema.required?.includes(name) ?? false,
      meaning: field.description ?? '',
      form: formOf(field),
      example: exampleText(field.examples?.[0]),
    };
    return [row, ...inside(field, path)];
  });
}

function inside(field: JsonSchema, path: string): FieldRow[] {
  if (field.properties) return rowsOf(field, `${path}.`);
  if (field.items) return rowsOf(field.items, `${path}[].`);
  const groups = (field.anyOf ?? []).filter((f) => f.properties);
  const rows = groups.flatMap((g) => rowsOf(g, `${path}.`));
  // { value, low, high } is the same for every quantity that may be a range; it is told once, in words.
  return rows.every((r) => /\.(value|low|high)$/.test(r.field))
    ? []
    : rows.filter((r, i) => rows.findIndex((q) => q.field === r.field) === i);
}

function formOf(field: JsonSchema): string {
  if (field.enum) return field.enum.join(', ');
  if (field.const !== undefined) return String(field.const);
  if (field.anyOf) {
    const forms = [...new Set(field.anyOf.map(formOf))];
    return forms.join(', or ');
  }
  const names: Record<string, string> = {
    string: 'text',
    number: 'number',
    integer: 'whole number',
    boolean: 'true or false',
    array: 'list',
  };
  if (field.type === 'object') return isRange(field) ? 'value with low and high' : 'group';
  return names[field.type ?? ''] ?? 'text';
}

function isRange(field: JsonSchema): boolean {
  return Object.keys(field.properties ?? {}).join() === 'value,low,high';
}

function exampleText(example: unknown): string {
  if (example === undefined) return '';
  return typeof example === 'string' ? example : JSON.stringify(example);
}
