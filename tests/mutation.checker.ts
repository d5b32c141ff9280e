/**
 * Lets Stryker try no mutant but those that `tests/mutate.ts` has drawn. Stryker itself takes ranges of a file alone, and all that
 * lies within the range of one that was drawn, a block of many lines say, would be tried as well.
 */
import { readFileSync } from 'node:fs';

export interface Place {
  start: { line: number; column: number };
  end: { line: number; column: number };
}

/** A mutant's range, counted from nought, and what it makes of that: what tells it from others of its file. */
export const mutantKey = (
  { start, end }: Place,
  { mutatorName, replacement = '' }: { mutatorName: string; replacement?: string | undefined },
): string => [start.line, start.column, end.line, end.column, mutatorName, replacement].join(' ');

interface Given {
  id: string;
  fileName: string;
  location: Place;
  mutatorName: string;
  replacement?: string | undefined;
}

/** Stryker asks a checker whether a mutant compiles, and does not try one that does not. */
class DrawnOnly {
  /** Keys behind the file's path from the project. */
  private drawn: string[] = [];

  async init(): Promise<void> {
    this.drawn = JSON.parse(readFileSync(process.env.MUTATION_DRAWN!, 'utf8'));
  }

  async check(mutants: readonly Given[]): Promise<Record<string, { status: string; reason?: string }>> {
    const isDrawn = (one: Given) => {
      const key = mutantKey(one.location, one);
      return this.drawn.some(
        (drawn) => drawn.endsWith(` ${key}`) && one.fileName.endsWith(drawn.slice(0, -key.length - 1)),
      );
    };
    return Object.fromEntries(
      mutants.map((one) => [
        one.id,
        isDrawn(one) ? { status: 'passed' } : { status: 'compileError', reason: 'not drawn' },
      ]),
    );
  }

  async group(mutants: readonly Given[]): Promise<string[][]> {
    return [mutants.map(({ id }) => id)];
  }
}

export const strykerPlugins = [{ kind: 'Checker', name: 'drawn', injectableClass: DrawnOnly }];
