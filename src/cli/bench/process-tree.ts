/** Runs a process and watches what it and its children take. */
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';

export interface Taken {
  seconds: number;
  /** Processor time of the whole tree; undefined where the system does not tell [s]. */
  cpuSeconds?: number | undefined;
  /** Largest memory of the tree at one time; undefined where the system does not tell [MB]. */
  peakMB?: number | undefined;
  code: number | null;
  out: string;
}

const EVERY_MS = 250;
/** Clock ticks of /proc in a second, and bytes of a page: fixed on Linux for the processors that Node runs on. */
const TICKS = 100;
const PAGE = 4096;

/**
 * Runs a command to its end.
 * @param args - of this very Node
 * @param env - beside the environment
 */
export function watched(args: string[], env: Record<string, string> = {}): Promise<Taken> {
  return new Promise((resolve, reject) => {
    const started = performance.now();
    const child = spawn(process.execPath, args, { env: { ...process.env, ...env } });
    let out = '';
    child.stdout.on('data', (data) => {
      out += data;
    });
    child.stderr.on('data', (data) => {
      out += data;
    });
    let peak = 0;
    let ticks = 0;
    const timer = setInterval(() => {
      const tree = treeOf(child.pid!);
      peak = Math.max(
        peak,
        tree.reduce((sum, p) => sum + p.pages, 0),
      );
      ticks = Math.max(
        ticks,
        tree.reduce((sum, p) => sum + p.ticks, 0),
      );
    }, EVERY_MS);
    child.on('error', reject);
    child.on('close', (code) => {
      clearInterval(timer);
      resolve({
        seconds: (performance.now() - started) / 1000,
        cpuSeconds: ticks > 0 ? ticks / TICKS : undefined,
        peakMB: peak > 0 ? (peak * PAGE) / 1e6 : undefined,
        code,
        out,
      });
    });
  });
}

/** A process and all below it, from /proc; nothing where there is none. */
function treeOf(root: number): { pages: number; ticks: number }[] {
  let ids: string[];
  try {
    ids = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  } catch {
    return [];
  }
  const found = ids.flatMap((id) => {
    try {
      // The name in brackets may hold spaces; what is counted comes after it.
      const fields = readFileSync(`/proc/${id}/stat`, 'utf8')
        .replace(/^.*\) /s, '')
        .split(' ');
      const number = (i: number) => Number(fields[i]);
      return [
        {
          id: Number(id),
          parent: number(1),
          ticks: number(11) + number(12) + number(13) + number(14),
          pages: number(21),
        },
      ];
    } catch {
      return [];
    }
  });
  const tree = new Set([root]);
  for (let size = 0; size !== tree.size; ) {
    size = tree.size;
    for (const p of found) if (tree.has(p.parent)) tree.add(p.id);
  }
  return found.filter((p) => tree.has(p.id));
}
