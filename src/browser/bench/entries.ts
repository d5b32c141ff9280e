/** The bench record of one machine as plain data: what `content/records/` takes, in the units of its fields. */

export interface RecordEntries {
  readings: { date: string; volts: number; temperatureC: number; restedH: number }[];
  charged: { date: string; toPct: number }[];
  done: { date: string; step: string }[];
  notes: { date: string; text: string; assembly?: string | undefined }[];
  asLeft: { item: string; where?: string | undefined; since?: string | undefined }[];
}
