/** Procedure files -> the planner's procedures, and what the whole library leaves open. */
import type { Procedure } from '../planner/household.ts';
import { type LedgerProblem, ledgerProblems } from '../planner/ledger/index.ts';
import { mergeProcedures } from '../planner/tasks/index.ts';
import { check } from './check.ts';
import { procedureProblems } from './cross-procedure.ts';
import { type ContentFile, sortFiles } from './files.ts';
import { type Loaded, problemAt } from './loaded.ts';
import { nearest, type Problem } from './problem.ts';
import { toProcedure } from './resolve-procedure.ts';
import { type ProcedureFile, procedureSchema } from './schemas/procedure.ts';
import { readSource } from './source.ts';
import { decode } from './text.ts';

/**
 * Procedure files alone: the sound ones, and what is wrong with the others.
 * @param files - paths as in a content folder: "procedures/…"
 */
export function readProcedures(files: readonly ContentFile[]): { procedures: Procedure[]; problems: Problem[] } {
  const { procedures, problems } = bundleOf(files);
  return { procedures, problems };
}

export interface Bundle {
  procedures: Procedure[];
  problems: Problem[];
  /** What the procedures leave open among themselves. */
  ledger: Problem[];
}

/** Bundles met already: a page reads its household at every change, with the same list of bundled files each time. */
const bundles = new WeakMap<readonly ContentFile[], Bundle>();

/** The procedures that are bundled with the project, read once. */
export function bundleOf(files: readonly ContentFile[]): Bundle {
  const known = bundles.get(files);
  if (known) return known;
  const { sorted, problems } = sortFiles(files);
  const procedures = soundProcedures(
    sorted.map((f) => {
      const source = readSource(f.file.path, f.file.bytes);
      const checked = check(source, procedureSchema);
      const loaded = { id: f.id, source, checked };
      problems.push(...source.problems, ...checked.problems, ...procedureProblems(loaded));
      return loaded;
    }),
  );
  const bundle = { procedures, problems, ledger: libraryProblems(mergeProcedures(procedures, [])) };
  bundles.set(files, bundle);
  return bundle;
}

/**
 * What the sound procedures leave open among themselves while others are broken. Nothing is told that the broken ones may see to:
 * of an item that stands in one, or of a name that may be in one.
 * @param procedures - the sound ones, library and own together
 * @param broken - the others, as they are written
 */
export function ledgerBeside(
  procedures: readonly Procedure[],
  broken: readonly { id: string; bytes: ContentFile['bytes'] }[],
): Problem[] {
  const texts = broken.map(({ bytes }) => decode(bytes).text);
  if (texts.includes(undefined)) return [];
  const mayBeIn = (name: string) =>
    texts.some((text) => text!.includes(name)) || broken.some(({ id }) => name === id || name.startsWith(`${id}.`));
  return libraryProblems(procedures, ({ item, what }) =>
    item === '' ? broken.some(({ id }) => what.includes(`${id}.`)) : mayBeIn(item),
  );
}

/**
 * What the procedures leave open among themselves; a name that leads nowhere with the one that it is near to.
 * @param isUnsure - for what is not told
 */
export function libraryProblems(
  procedures: readonly Procedure[],
  isUnsure: (problem: LedgerProblem) => boolean = () => false,
): Problem[] {
  const steps = procedures.flatMap((p) => p.steps.map((step) => ({ name: `${p.id}.${step.id}`, step })));
  const names = [...procedures.map((p) => p.id), ...steps.map(({ name }) => name)];
  const items = steps.flatMap(({ step }) => step.opens.map(({ item }) => item));
  const found = ledgerProblems(procedures).filter((problem) => !isUnsure(problem));
  return found.map(({ item, ...rest }) => {
    const after = /^found "([^"]*)" in "after", expected the id/.exec(rest.what)?.[1];
    const near =
      after === undefined ? nearest(item, rest.what.includes('no step opens it') ? items : []) : nearest(after, names);
    return near === undefined ? rest : { ...rest, fix: `Write ${near}, if that is meant. ${rest.fix}` };
  });
}

/** Those of the files that are sound, as the planner takes them. */
export function soundProcedures(loaded: readonly Loaded<ProcedureFile>[]): Procedure[] {
  return loaded.flatMap(({ id, source, checked }) => (checked.value ? [toProcedure(id, checked.value, source)] : []));
}

/**
 * What bundled procedures open and a file of the household's, in the place of a bundled one, no longer closes: told of that file,
 * since the owner has no other.
 * @param problems - of library and own together
 * @param own - the household's files
 */
export function inOwnFiles(
  problems: readonly Problem[],
  own: readonly Loaded<ProcedureFile>[],
  bundled: readonly Procedure[],
): Problem[] {
  const lost = new Map<Loaded<ProcedureFile>, Set<string>>();
  const others = problems.filter((problem) => {
    const item = /^found that it opens "([^"]*)"/.exec(problem.what)?.[1];
    if (item === undefined || own.some(({ source }) => source.file === problem.file)) return true;
    const closes = ({ id, steps }: Procedure) => steps.some((step) => step.closes.includes(item)) && id;
    const replaced = own.find(({ id }) => bundled.some((one) => closes(one) === id));
    if (replaced) lost.set(replaced, (lost.get(replaced) ?? new Set()).add(item));
    return replaced === undefined;
  });
  const told = [...lost].map(([{ source }, items]) => {
    const list = [...items].join(', ');
    const what = `found no step that closes ${list}, which bundled procedures open, expected one as in the bundled file of this name`;
    return problemAt(source, [], what, `Add "closes: [${list}]" to a step here, or give the file a name of its own.`);
  });
  return [...others, ...told];
}
