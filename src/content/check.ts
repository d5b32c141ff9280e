/** Holds plain data against a schema and turns each issue into a problem with its place in the file. */
import * as z from 'zod/mini';
import { nearest, type Problem, printable, shown } from './problem.ts';
import { fieldName, type Path, type Source } from './source.ts';
import { kindName, wordsOf } from './words.ts';

export interface Checked<T> {
  /** The whole file, where it is sound. */
  value?: T;
  /** The fields that are sound, for checks across files; never used for planning. */
  sound: Partial<T>;
  problems: Problem[];
}

/** Faults told of one file, so that a file of another kind does not answer with a line for each of its own. */
const MOST_ISSUES = 200;

/** Unknown fields told of one group: a file with more is a file of another kind. */
const MOST_UNKNOWN = 100;

type Def = {
  type: string;
  shape?: Record<string, z.ZodMiniType>;
  element?: z.ZodMiniType;
  innerType?: z.ZodMiniType;
  in?: z.ZodMiniType;
  options?: z.ZodMiniType[];
  items?: z.ZodMiniType[];
};

/**
 * Validates one file.
 * @param source - the file as read
 * @param schema - a strict object
 */
export function check<S extends z.ZodMiniObject>(source: Source, schema: S): Checked<z.output<S>> {
  const data = source.data;
  if (data === undefined) return { sound: {}, problems: [] };
  if (data === null || typeof data !== 'object' || Array.isArray(data)) {
    const what = `found ${shown(data)} in place of the file's fields, expected lines such as "${Object.keys(schema.shape)[0]}: …"`;
    return {
      sound: {},
      problems: [
        {
          file: source.file,
          ...source.at([]),
          field: '',
          what,
          fix: 'Write one field on each line; the demo files show how.',
        },
      ],
    };
  }
  const result = schema.safeParse(data, { error: () => '', reportInput: true });
  if (result.success) return { value: result.data, sound: result.data as Partial<z.output<S>>, problems: [] };
  const issues = withoutWider(result.error.issues).slice(0, MOST_ISSUES);
  const problems = withoutMistyped(issues, schema).flatMap((issue) => problemsOf(issue, [], source, schema));
  return { sound: soundPart(data as Record<string, unknown>, schema, result.error.issues), problems };
}

function soundPart<S extends z.ZodMiniObject>(
  data: Record<string, unknown>,
  schema: S,
  issues: z.core.$ZodIssue[],
): Partial<z.output<S>> {
  const bad = new Set<PropertyKey>();
  for (const issue of issues) {
    if (issue.path.length > 0) bad.add(issue.path[0]!);
    else if (issue.code === 'unrecognized_keys') for (const key of issue.keys) bad.add(key);
  }
  const kept = Object.fromEntries(Object.entries(data).filter(([key]) => !bad.has(key)));
  // The shape alone: what a schema checks across its fields is reported already, and cannot be made partial.
  const result = z.partial(z.strictObject(schema.shape)).safeParse(kept);
  return (result.success ? result.data : {}) as Partial<z.output<S>>;
}

/** Of several bounds that one figure is beyond, the narrowest says it: "a whole number" has bounds of its own. */
function withoutWider(issues: readonly z.core.$ZodIssue[]): z.core.$ZodIssue[] {
  const bound = (issue: z.core.$ZodIssue) =>
    issue.code === 'too_big' ? Number(issue.maximum) : issue.code === 'too_small' ? -Number(issue.minimum) : undefined;
  return issues.filter((issue) => {
    const own = bound(issue);
    if (own === undefined) return true;
    const path = JSON.stringify(issue.path);
    return !issues.some((o) => o.code === issue.code && bound(o)! < own && JSON.stringify(o.path) === path);
  });
}

/** A field that is missing because its name is mistyped is one fault, not two. */
function withoutMistyped(issues: readonly z.core.$ZodIssue[], root: z.ZodMiniType): z.core.$ZodIssue[] {
  const meant = new Set(
    issues.flatMap((issue) =>
      issue.code !== 'unrecognized_keys'
        ? []
        : issue.keys
            .slice(0, MOST_UNKNOWN)
            .map((key) => JSON.stringify([...issue.path, nearest(key, keysOf(schemaAt(root, issue.path as Path)))])),
    ),
  );
  return issues.filter((issue) => issue.input !== undefined || !meant.has(JSON.stringify(issue.path)));
}

function problemsOf(issue: z.core.$ZodIssue, before: Path, source: Source, root: z.ZodMiniType): Problem[] {
  const path = [...before, ...(issue.path as (string | number)[])];
  if (source.refused(path)) return [];
  const make = (where: { line: number; column: number }, field: Path, what: string, fix: string): Problem => ({
    file: source.file,
    ...where,
    field: labelOf(field, source.data),
    what,
    fix,
  });
  const write = writeLike(root, path);
  const example = exampleOf(schemaAt(root, path));
  const needed = isNeeded(root, path);

  if (issue.code === 'unrecognized_keys') {
    const known = keysOf(schemaAt(root, path));
    return issue.keys.slice(0, MOST_UNKNOWN).map((key) => {
      if (known.includes(key)) {
        // A field of another form of the same group: { near: …, station: … }.
        const what = `found "${key}" beside fields that do not go with it, expected one form or the other`;
        return make(source.atKey([...path, key]), [...path, key], what, 'Delete one of them.');
      }
      const at = source.atKey([...path, key]);
      if (/^\d+ *[a-z°%]/i.test(key)) {
        const what = `found the field "${printable(key)}", expected a field name`;
        return make(at, [...path, key], what, 'Inside braces a comma ends the field: write decimals with a point.');
      }
      const near = nearest(key, known);
      const expected = near ? `"${near}"` : `one of ${known.join(', ')}`;
      const fix = near ? `Write "${near}", or delete the line.` : 'Delete the line, or write one of these.';
      return make(at, [...path, key], `found the unknown field "${printable(key)}", expected ${expected}`, fix);
    });
  }
  if (issue.code === 'invalid_union') {
    const branch = bestBranch(issue.errors, issue.input);
    if (branch && !(branch.every(isWord) && branch.length > 0)) {
      return branch.flatMap((inner) => problemsOf(inner, path, source, root));
    }
    const forms = [...new Set(formsOf(issue.errors))].join(', or ');
    const found = issue.input === null ? 'nothing after the colon' : shown(issue.input);
    const orNone = issue.input === null && !needed ? ' Or delete the line.' : '';
    return [make(source.at(path), path, `found ${found}, expected ${forms}`, `${write}${orNone}`)];
  }
  if (issue.input === undefined && issue.code === 'invalid_type') {
    const wanted = issue.message || `${kindName(issue.expected)}`;
    return [
      make(
        source.at(path),
        path,
        `found nothing, expected ${wanted}`,
        example === undefined
          ? `Add the line "${String(path.at(-1))}: …".`
          : `Add the line "${String(path.at(-1))}: ${example}".`,
      ),
    ];
  }
  const { what, fix } = wordsOf(issue, write, path, needed);
  return [make(source.at(path), path, what, fix)];
}

/** "Write it like …", by the field's own example, or by that of the list it stands in. */
function writeLike(root: z.ZodMiniType, path: Path): string {
  const example = exampleOf(schemaAt(root, path));
  const last = path.at(-1);
  if (example !== undefined) return `Write it like ${typeof last === 'string' ? `${last}: ` : ''}${example}.`;
  return typeof last === 'number' ? writeLike(root, path.slice(0, -1)) : 'Correct it.';
}

/** What each form of a field is, in words. */
function formsOf(branches: readonly z.core.$ZodIssue[][]): string[] {
  return branches.flatMap(([issue]) => {
    if (issue?.code === 'invalid_value') return issue.values.map(String);
    if (issue?.code !== 'invalid_type' || issue.path.length > 0) return [];
    return [issue.expected === 'object' ? 'indented lines with its fields' : issue.message || kindName(issue.expected)];
  });
}

/** False where the field may be left out, or the group that it stands in has no such field. */
function isNeeded(root: z.ZodMiniType, path: Path): boolean {
  const group = schemaAt(root, path.slice(0, -1));
  const field = group && def(group).shape?.[String(path.at(-1))];
  return field !== undefined && def(field).type !== 'optional';
}

/** True for the issue of a form that is one single word: "none". */
function isWord(issue: z.core.$ZodIssue): boolean {
  return issue.path.length === 0 && issue.code === 'invalid_value' && issue.values.length === 1;
}

/** The form that was most likely meant: the one whose outer type fits what was found. */
function bestBranch(branches: z.core.$ZodIssue[][], input: unknown): z.core.$ZodIssue[] | undefined {
  const inside = branches.filter((issues) => !issues.some((i) => i.path.length === 0 && i.code === 'invalid_type'));
  const isText = typeof input === 'string';
  const literals = (issues: z.core.$ZodIssue[]) => issues.every(isWord);
  // Lines with fields were never meant to be one of several words.
  const isGroup = typeof input === 'object' && input !== null;
  const words = (issues: z.core.$ZodIssue[]) => issues.every((i) => i.path.length === 0 && i.code === 'invalid_value');
  const candidates = inside.filter((issues) => !(literals(issues) && !isText) && !(words(issues) && isGroup));
  const rank = (issues: z.core.$ZodIssue[]) => {
    const unknown = issues.reduce((n, i) => n + (i.code === 'unrecognized_keys' ? i.keys.length : 0), 0);
    const missing = issues.filter(
      (i) => i.code === 'invalid_type' && i.input === undefined && i.path.length === 1,
    ).length;
    return unknown * 2 + missing * 2 + (literals(issues) ? 5 : 0) + issues.length / 100;
  };
  return candidates.sort((a, b) => rank(a) - rank(b))[0] ?? (branches.length === 1 ? branches[0] : undefined);
}

/**
 * Holds one answer against one field of a schema.
 * @returns the problem in words, or undefined where the answer is sound
 */
export function checkField(schema: z.ZodMiniType, path: Path, answer: unknown): string | undefined {
  const field = schemaAt(schema, path);
  const result = field?.safeParse(answer, { error: () => '', reportInput: true });
  if (!field || !result || result.success) return undefined;
  const example = exampleOf(field);
  const { what, fix } = wordsOf(result.error.issues[0]!, example === undefined ? '' : `For example: ${example}.`, path);
  return `${what}. ${fix}`.trim();
}

function def(schema: z.ZodMiniType): Def {
  return schema.def as unknown as Def;
}

/** The schema at a path of the data; the first form that has the path, where there are several. */
export function schemaAt(schema: z.ZodMiniType, path: Path): z.ZodMiniType | undefined {
  const d = def(schema);
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

function keysOf(schema: z.ZodMiniType | undefined): string[] {
  if (!schema) return [];
  const d = def(schema);
  if (d.shape) return Object.keys(d.shape);
  if (d.options) return [...new Set(d.options.flatMap(keysOf))];
  return d.innerType ? keysOf(d.innerType) : [];
}

function exampleOf(schema: z.ZodMiniType | undefined): string | undefined {
  const meta = schema && z.globalRegistry.get(schema);
  const example = (meta?.examples as unknown[] | undefined)?.[0];
  if (example === undefined) return groupExample(schema);
  if (typeof example === 'string') return /^\d{4}-|^[\d.]+$|[:#{}[\]]/.test(example) ? `"${example}"` : example;
  return JSON.stringify(example).replaceAll('"', '').replaceAll(',', ', ').replaceAll(':', ': ');
}

/** The fields that an entry of a list cannot do without, each with its example. */
function groupExample(schema: z.ZodMiniType | undefined): string | undefined {
  const shape = schema && def(schema).shape;
  if (!shape) return undefined;
  const needed = Object.entries(shape).filter(([, field]) => def(field).type !== 'optional');
  const written = needed.map(([name, field]) => `${name}: ${exampleOf(field) ?? '…'}`);
  return written.length === 0 ? undefined : `{ ${written.join(', ')} }`;
}

/** A field's name where entries of a list are called by their id: "jobs.valves.minutes". */
export function labelOf(path: Path, data: unknown): string {
  let node = data;
  const parts = path.map((part) => {
    node = (node as Record<string | number, unknown> | null | undefined)?.[part];
    const own =
      typeof part === 'number' && typeof node === 'object' && node !== null ? (node as { id?: unknown }).id : undefined;
    return typeof own === 'string' && /^[a-z0-9-]{1,60}$/.test(own) ? own : part;
  });
  return fieldName(parts);
}
