/** Fields that stand where they do not belong: where they do, and files of one kind in the folder of another. */
import type * as z from 'zod/mini';
import { type FileKind, KINDS_OF_FILES } from './fields.ts';
import { fieldsOf, isNeeded, keysOf } from './schema-walk.ts';

/** Names such as "name" or "id" have so many homes that none can be meant. */
const MOST_HOMES = 3;

/**
 * Where in a file of this kind a field of that name belongs: the groups around it from the outermost, "[]" behind a list.
 * @param root - the file's schema
 * @returns the outermost place alone where it may stand there; none where there is no such field, or in too many groups
 */
export function homesOf(root: z.ZodMiniType, name: string): (readonly string[])[] {
  const homes = fieldsOf(root).flatMap((field) => (field.name === name ? [field.home] : []));
  const outermost = homes.find((home) => home.length === 0);
  if (outermost) return [outermost];
  return homes.length <= MOST_HOMES ? homes : [];
}

/**
 * What to say of a field that belongs elsewhere in its file, or in a file of another kind.
 * @param inside - the group it was found in; undefined for the outermost fields
 */
export function misplacedWords(
  name: string,
  inside: string | undefined,
  root: z.ZodMiniType,
): { what: string; fix: string } | undefined {
  const here = inside === undefined ? 'among the outermost fields' : `inside "${inside}"`;
  if (inside === 'battery' && name === 'voltage')
    return {
      what: `found "voltage" ${here}, expected a battery of 12 V, whose voltage is not written`,
      fix: 'Delete the line; starting batteries of 6 V and 24 V are not planned.',
    };
  const own = kindOfSchema(root);
  if (name === 'id' && inside === undefined)
    return {
      what: `found "id" ${here}, expected none: the ${own === 'record' ? 'folder' : 'file'} is called by it`,
      fix: 'Delete the line.',
    };
  // What is known of a drive battery is not true of the small one beside it.
  if (inside === 'driveBattery') return undefined;
  const homes = homesOf(root, name);
  if (homes[0]?.length === 0)
    return {
      what: `found "${name}" ${here}, expected it among the outermost fields`,
      fix: 'Move the line to the margin.',
    };
  if (homes.length > 0) {
    const where = homes.map(placeName).join(' or ');
    return {
      what: `found "${name}" ${here}, expected it inside ${where}`,
      fix: `Move the line into ${where}, indented like the other fields there.`,
    };
  }
  const kind = KINDS.find((other) => other !== own && keysOf(KINDS_OF_FILES[other].schema).includes(name));
  if (kind === undefined || inside !== undefined) return undefined;
  const { path } = KINDS_OF_FILES[kind];
  return {
    what: `found "${name}", which belongs in ${path}, expected fields of a ${own}`,
    fix: `Move the line to ${path}, or delete it.`,
  };
}

function placeName(home: readonly string[]): string {
  const group = home.map((part) => part.replace('[]', '')).join('.');
  return home.at(-1)!.endsWith('[]') ? `an entry of "${group}"` : `"${group}"`;
}

/** Paths, as text, at which something only seems to be missing or empty, since it stands elsewhere in the file. */
export function seeminglyMissing(issues: readonly z.core.$ZodIssue[], root: z.ZodMiniType): Set<string> {
  const strange = issues.flatMap((issue) => (issue.code === 'unrecognized_keys' ? issue.keys.slice(0, MOST_READ) : []));
  const missing = issues.filter(({ input }) => input === undefined || input === null).map(({ path }) => path);
  return new Set(
    strange.flatMap((name) =>
      homesOf(root, name).flatMap((home) => {
        const inHome = missing.filter((path) => isAt(path, [...home, name]) || isAt(path, home));
        return inHome.slice(-1).map((path) => JSON.stringify(path));
      }),
    ),
  );
}

/** A file with more strange fields is one of another kind. */
const MOST_READ = 100;

function isAt(path: readonly PropertyKey[], home: readonly string[]): boolean {
  const names = path.filter((part) => typeof part === 'string');
  return names.length > 0 && names.join('.') === home.join('.').replaceAll('[]', '');
}

/** The path of a file of another kind, with the same id. */
export function pathLike(file: string, kind: FileKind): string {
  const id = file
    .split('/')
    .at(-1)!
    .replace(/\.yaml$/, '');
  return KINDS_OF_FILES[kind].path.replace('<id>', id === 'household' ? '<id>' : id);
}

const KINDS = Object.keys(KINDS_OF_FILES) as FileKind[];

/** The kind of file that a schema is of. */
export function kindOfSchema(schema: z.ZodMiniType): FileKind {
  return KINDS.find((kind) => KINDS_OF_FILES[kind].schema === schema)!;
}

/**
 * The kind of file that fields make, where it is plainly another than its place says.
 * @param schema - of the kind that its place says
 */
export function otherKind(schema: z.ZodMiniType, data: object): FileKind | undefined {
  const names = Object.keys(data);
  const fitOf = (kind: FileKind) => {
    const { schema } = KINDS_OF_FILES[kind];
    const known = keysOf(schema);
    const missing = known.filter((name) => isNeeded(schema, [name]) && !names.includes(name)).length;
    const strange = names.filter((name) => !known.includes(name)).length;
    return { missing, strange, fit: names.length - 2 * strange - missing };
  };
  const own = kindOfSchema(schema);
  if (fitOf(own).fit >= 0) return undefined;
  return KINDS.find((kind) => {
    const { missing, strange } = fitOf(kind);
    return kind !== own && missing === 0 && names.length - strange >= 2 && strange <= names.length / 4;
  });
}
