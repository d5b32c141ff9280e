/** Fields that may be written in several forms: which one was meant, and what the others are. */
import type * as z from 'zod/mini';
import { nearest } from './problem.ts';
import { kindName } from './words.ts';

/** What each form of a field is, in words. */
export function formsOf(branches: readonly z.core.$ZodIssue[][]): string[] {
  return branches.flatMap(([issue]) => {
    if (issue?.code === 'invalid_value') return issue.values.map(String);
    if (issue?.code !== 'invalid_type' || issue.path.length > 0) return [];
    return [issue.expected === 'object' ? 'indented lines with its fields' : issue.message || kindName(issue.expected)];
  });
}

/** True for the issue of a form that is one single word: "none". */
export function isWord(issue: z.core.$ZodIssue): boolean {
  return issue.path.length === 0 && issue.code === 'invalid_value' && issue.values.length === 1;
}

/** The form that was most likely meant: the one whose outer type fits what was found. */
export function bestBranch(branches: z.core.$ZodIssue[][], input: unknown): z.core.$ZodIssue[] | undefined {
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
    // Of two forms that lack as much, the one is meant whose field is mistyped.
    const lacking = issues.flatMap((i) =>
      i.code === 'invalid_type' && i.input === undefined ? i.path.map(String) : [],
    );
    const mistyped = issues
      .flatMap((i) => (i.code === 'unrecognized_keys' ? i.keys : []))
      .filter((k) => nearest(k, lacking));
    return (unknown + missing - mistyped.length) * 2 + (literals(issues) ? 5 : 0) + issues.length / 100;
  };
  return candidates.sort((a, b) => rank(a) - rank(b))[0] ?? (branches.length === 1 ? branches[0] : undefined);
}
