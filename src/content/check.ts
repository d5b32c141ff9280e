/** Holds plain data against a schema and turns each issue into a problem with its place in the file. */
import type * as z from 'zod/mini';
import { alsoCalled } from './also-called.ts';
import { coordinatesFix } from './coordinates.ts';
import { isDiesel, NO_DIESEL } from './diesel.ts';
import { bestBranch, formsOf, isWord } from './forms.ts';
import { isId } from './ids.ts';
import { homesOf, kindOfSchema, misplacedWords, otherKind, pathLike, seeminglyMissing } from './misplaced.ts';
import { fieldName, type Path } from './path.ts';
import { nearest, type Problem, printable, shown } from './problem.ts';
import { exampleOf, isNeeded, keysOf, schemaAt, writeLike } from './schema-walk.ts';
import { type Known, soundPart } from './sound.ts';
import type { Source } from './source.ts';
import { surplusDashes } from './surplus-dashes.ts';
import { isNothing, kindName, wordsOf } from './words.ts';

export interface Checked<T> {
  /** The whole file, where it is sound. */
  value?: T | undefined;
  /** What of the file is sound, for checks across fields and files; never used for planning. */
  sound: Known<T>;
  /** True where all that the file says of a field is sound, or it says nothing of it. */
  isWhole(field: keyof T & string): boolean;
  problems: Problem[];
}

/** Faults told of one file, so that a file of another kind does not answer with a line for each of its own. */
const MOST_ISSUES = 200;

/** Unknown fields told of one group: a file with more is a file of another kind. */
const MOST_UNKNOWN = 100;

/**
 * Validates one file.
 * @param source - the file as read
 * @param schema - a strict object
 */
export function check<S extends z.ZodMiniObject>(source: Source, schema: S): Checked<z.output<S>> {
  const data = source.data;
  if (data === undefined) return nothingOf([]);
  if (data === null || typeof data !== 'object' || Array.isArray(data)) {
    const what = `found ${shown(data)} in place of the file's fields, expected lines such as "${Object.keys(schema.shape)[0]}: …"`;
    const fix = 'Write one field on each line; the demo files show how.';
    return nothingOf([{ file: source.file, ...source.at([]), field: '', what, fix }]);
  }
  const other = source.isPart ? undefined : otherKind(schema, data);
  if (other) {
    const what = `found the fields of a ${other}, expected those of a ${kindOfSchema(schema)}`;
    return nothingOf([
      {
        file: source.file,
        ...source.at([]),
        field: '',
        what,
        fix: `Move the file to ${pathLike(source.file, other)}.`,
      },
    ]);
  }
  const [only, ...more] = Object.keys(data);
  if (!source.isPart && only !== undefined && more.length === 0 && isGroupOf(schema, only, Object.values(data)[0])) {
    const what = `found all fields inside "${printable(only)}", expected them at the margin`;
    const fix = `Delete the line "${printable(only)}:", and begin the lines below it at the margin.`;
    return nothingOf([{ file: source.file, ...source.atKey([only]), field: '', what, fix }]);
  }
  const result = schema.safeParse(data, { error: () => '', reportInput: true });
  const found = (result.error?.issues ?? []).filter((issue) => !source.isPart || isOwnFault(issue));
  const sound = (result.success ? result.data : soundPart(schema, data)) as Known<z.output<S>>;
  const faulty = new Set([...found.map((issue) => issue.path[0]), ...meantFields(found, schema)]);
  const isWhole = (field: string) => !faulty.has(field) && !source.refused([field]);
  const issues = withoutWider(found).slice(0, MOST_ISSUES);
  const { dashes, rest } = surplusDashes(issues, data, schema);
  const problems = [
    ...dashes.map((path) => dashProblem(path, source)),
    ...withoutMistyped(rest, schema).flatMap((issue) => problemsOf(issue, [], source, schema)),
  ];
  if (source.isPart) return nothingOf(problems);
  return { value: result.data, sound, isWhole, problems };
}

function dashProblem(path: Path, source: Source): Problem {
  const name = source.keysAt(path)[0]!;
  return {
    file: source.file,
    ...source.at(path),
    field: labelOf(path, source.data),
    what: `found a dash before "${name}", which belongs to the entry above, expected one dash before the first field of each entry`,
    fix: `Write two spaces in place of the dash, so that "${name}" stands below the first field.`,
  };
}

/** True where something is wrong with a value that is there, and not with which fields there are. */
function isOwnFault({ path, input }: z.core.$ZodIssue): boolean {
  return path.length > 0 && !(path.length === 1 && input === undefined);
}

/** True for a strange field around fields that are the file's own. */
function isGroupOf(schema: z.ZodMiniObject, name: string, value: unknown): boolean {
  const inside = Array.isArray(value) ? value[0] : value;
  const known = Object.keys(schema.shape);
  return (
    !known.includes(name) &&
    typeof inside === 'object' &&
    inside !== null &&
    Object.keys(inside).some((k) => known.includes(k))
  );
}

/** What is known of a file that was refused as a whole. */
function nothingOf<T>(problems: Problem[]): Checked<T> {
  return { sound: {} as Known<T>, isWhole: () => false, problems };
}

/** The field that was meant by another word for it, or by a mistyped one. */
const fieldMeant = (name: string, known: readonly string[]) => alsoCalled(name, known) ?? nearest(name, known);

/** The fields that unknown ones were meant to be or to stand in: what the file says of those is not known. */
function meantFields(issues: readonly z.core.$ZodIssue[], schema: z.ZodMiniObject): string[] {
  const known = Object.keys(schema.shape);
  return issues.flatMap((issue) => {
    if (issue.code !== 'unrecognized_keys') return [];
    const keys = issue.keys.slice(0, MOST_UNKNOWN);
    const homes = keys.flatMap((key) => homesOf(schema, key).map((home) => (home[0] ?? key).replace('[]', '')));
    return issue.path.length > 0 ? homes : [...homes, ...keys.flatMap((key) => fieldMeant(key, known) ?? [])];
  });
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
            .map((key) => JSON.stringify([...issue.path, fieldMeant(key, keysOf(schemaAt(root, issue.path as Path)))])),
    ),
  );
  const elsewhere = seeminglyMissing(issues, root);
  return issues.filter(
    ({ input, path }) =>
      !(input === undefined && meant.has(JSON.stringify(path))) &&
      !((input === undefined || input === null) && elsewhere.has(JSON.stringify(path))),
  );
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
      const [, name, glued] = /^([\w-]+):(\S.*)$/s.exec(key) ?? [];
      if (name && glued && known.includes(name)) {
        const what = `found no space after the colon in "${printable(key)}", expected "${name}: ${printable(glued)}"`;
        return make(at, [...path, name], what, 'Put a space after the colon.');
      }
      const value = (issue.input as Record<string, unknown> | undefined)?.[key];
      if (isDiesel(key) || isDiesel(value))
        return make(
          at,
          [...path, key],
          `found "${printable(key)}: ${printable(String(value))}", expected petrol`,
          NO_DIESEL,
        );
      const inside = path.length === 0 ? undefined : labelOf(path, source.data);
      const misplaced = alsoCalled(key, known) === undefined ? misplacedWords(key, inside, root) : undefined;
      if (misplaced) return make(at, [...path, key], misplaced.what, misplaced.fix);
      const near = fieldMeant(key, known);
      const expected = near ? `"${near}"` : `one of ${known.join(', ')}`;
      const fix = near ? `Write "${near}", or delete the line.` : 'Delete the line, or write one of these.';
      return make(at, [...path, key], `found the unknown field "${printable(key)}", expected ${expected}`, fix);
    });
  }
  if (issue.code === 'invalid_union') {
    if (isNothing(issue.input) && formsOf(issue.errors).includes('none')) {
      const what = `found ${shown(issue.input)}, expected none where there is none`;
      return [make(source.at(path), path, what, 'Write none.')];
    }
    const branch = bestBranch(issue.errors, issue.input);
    if (branch && !(branch.every(isWord) && branch.length > 0)) {
      return withoutMistyped(branch, schemaAt(root, path) ?? root).flatMap((inner) =>
        problemsOf(inner, path, source, root),
      );
    }
    const forms = [...new Set(formsOf(issue.errors))].join(', or ');
    const found = issue.input === null ? 'nothing after the colon' : shown(issue.input);
    const orNone = issue.input === null && !needed ? ' Or delete the line.' : '';
    const fix = isDiesel(issue.input)
      ? NO_DIESEL
      : Array.isArray(issue.input)
        ? 'Take the dashes or brackets away.'
        : write;
    const place = coordinatesFix(path, issue.input);
    return [make(source.at(path), path, `found ${found}, expected ${forms}`, place ?? `${fix}${orNone}`)];
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
  const { what, ...own } = wordsOf(issue, write, path, needed);
  const fix = coordinatesFix(path, issue.input) ?? own.fix;
  const words = typeof issue.input === 'string' && typeof path.at(-1) === 'number' ? issue.input.split(' ') : [];
  if (words.length > 1 && words.every(isId))
    return [
      make(source.at(path), path, what, `${fix.slice(0, -1)}; or with a comma between two: ${words.join(', ')}.`),
    ];
  return [make(source.at(path), path, what, fix)];
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
