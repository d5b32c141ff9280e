/**
 * The scheduling problem under the agenda, free of machines and dates: activities, renewable resources, days.
 *
 * One long day makes it the resource-constrained project scheduling problem of the literature.
 */
export interface Activity {
  /** [min] */
  minutes: number;
  /** Units of each renewable resource while it runs; as long as `Problem.capacity`. */
  demand: readonly number[];
  /** Activities that end first, and the time that must pass after them [min]. */
  after: readonly { of: number; lag: number }[];
  /** First and last day, as positions in `Problem.days`; `to < from` where its window holds no day. */
  from: number;
  to: number;
  /** Days on which it may be done, where not all are fit. */
  fit?: Uint8Array | undefined;
  /** Not before this minute of the absolute clock. */
  ready?: number | undefined;
  /** Activities of one group (a machine) are kept together, and share a stand for the session. */
  group: number;
  /** Stands that carry its group; empty when it needs none. */
  stands: readonly number[];
  /** Chargers that suit it, empty when it needs none, and the time one stays taken after its end [min]. */
  chargers: readonly number[];
  chargeMinutes: number;
  /** Position in `Problem.tripMinutes`. */
  place: number;
  /** The activity that it goes on from without a break. */
  goesOnFrom?: number | undefined;
  splittable: boolean;
}

export interface Day {
  /** Start on an absolute clock [min]. */
  start: number;
  /** [min] */
  length: number;
}

export interface Problem {
  activities: readonly Activity[];
  /** Units of each renewable resource. */
  capacity: readonly number[];
  /** In order, not overlapping. */
  days: readonly Day[];
  /** What going to each place takes out of a session, once [min]. */
  tripMinutes: readonly number[];
}

/** One stretch of work on one activity. */
export interface Piece {
  activity: number;
  day: number;
  /** Minutes from the start of the day's session. */
  start: number;
  minutes: number;
}

export interface Schedule {
  /** First day of each activity; −1 where it found no place. */
  day: Int32Array;
  /** Start and end on the absolute clock; NaN where it found no place. */
  start: Float64Array;
  end: Float64Array;
  pieces: Piece[];
  /** Activities that found no place. */
  missing: number[];
  /** Days with work on them. */
  sessions: number;
}
