/** What the page asks of the worker, and what comes back. */
import type { AnswerProblem, Answers } from '../../content/answers.ts';
import type { Problem } from '../../content/problem.ts';
import type { BenchRecord } from '../../planner/bench-record.ts';
import type { SeasonPlan } from '../../planner/season-plan.ts';
import type { Replanned, Replanning } from '../bench/replan.ts';
import type { Shown, View } from './show.ts';
import type { Taken } from './taken.ts';

/** Where things are, told once. */
export interface Setting {
  /** Folder of the site: "/". */
  base: string;
  methods: Record<string, string>;
}

export interface LoadedFile {
  path: string;
  bytes: Uint8Array;
}

export interface StationFound {
  id: string;
  name: string;
  country: string;
  /** As it stands in the list. */
  label: string;
  /** The town that was looked for, where it is not the station itself. */
  town?: string | undefined;
  /** "52.4,9.7" where it is the nearest to a town or to coordinates. */
  point?: string | undefined;
}

/** Each request with its answer. */
export interface Asks {
  /** `zone` is the device's time zone, which tells the reader's country. */
  stations: [{ query: string; zone: string; units: string }, StationFound[]];
  form: [
    { answers: Answers; asOf: string; machine?: string | undefined },
    { problems: AnswerProblem[]; shown?: Shown },
  ];
  files: [{ files: LoadedFile[]; now: number; revised: string }, { problems: Problem[]; shown?: Shown; count: number }];
  show: [{ machine: string }, Shown];
  /** `moving`: what is in sight while the slider moves; absent when it is let go. */
  move: [{ machine: string; lastUse: string; moving?: View | undefined }, Shown];
  /** `taken` are the reminders of files that were taken before, then with those of this one. */
  calendar: [{ machine?: string | undefined; taken: Taken }, { file: string; taken: Taken }];
  content: [Record<string, never>, LoadedFile[]];
  plan: [Record<string, never>, SeasonPlan];
  readRecord: [
    { file: LoadedFile; asOf: string },
    { machine?: string | undefined; record?: BenchRecord; problems: Problem[] },
  ];
  /** `input` is the path of the published household. */
  record: [Replanning & { input: string }, Replanned];
  /** Of what `record` planned last; `earlier` is the file that may have been imported before. */
  recordCalendar: [{ machine?: string | undefined; earlier: string }, string];
}

export type Ask = keyof Asks;

export type Request = { [A in Ask]: { id: number; setting: Setting; ask: A; with: Asks[A][0] } }[Ask];
export type Reply = { id: number; answer?: unknown; failed?: string };
