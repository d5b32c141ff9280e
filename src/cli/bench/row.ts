/** One figure of a benchmark. */
export interface Row {
  what: string;
  value: number;
  unit: string;
  note?: string | undefined;
}
