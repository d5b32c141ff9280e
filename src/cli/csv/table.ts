/** A spreadsheet's text as rows of cells, whatever the separator; every fault by row and cell. */
import { CsvError, parse } from 'csv-parse/sync';

/** One fault of a spreadsheet. */
export interface CellProblem {
  /** Counted from 1, the row of names included. */
  row: number;
  /** Counted from 1; 0 for the whole row. */
  column: number;
  /** Name of the column, where it is about one. */
  field: string;
  what: string;
  fix: string;
}

/** Larger than any list of members [bytes]. */
const MAX_BYTES = 20_000_000;

const QUOTES: Record<string, string> = {
  CSV_QUOTE_NOT_CLOSED: 'found a quotation mark that is not closed, expected a second one at the end of the cell',
  CSV_INVALID_CLOSING_QUOTE: 'found a quotation mark inside a cell, expected it doubled',
  INVALID_OPENING_QUOTE: 'found a quotation mark inside a cell, expected it doubled, and the cell in quotation marks',
};

/**
 * Reads the bytes of a file with comma, semicolon or tab between its cells.
 * @param bytes - as found on disk
 * @returns rows of cells without the space around them, the row of names first
 */
export function readTable(bytes: Uint8Array): { rows: string[][]; problems: CellProblem[] } {
  const whole = (row: number, what: string, fix: string) => ({
    rows: [],
    problems: [{ row, column: 0, field: '', what, fix }],
  });
  if (bytes.byteLength > MAX_BYTES)
    return whole(1, `found ${Math.round(bytes.byteLength / 1e6)} MB, expected a list of machines`, 'Split the file.');
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return whole(
      1,
      'found text that is not UTF-8, expected UTF-8',
      'Save it again from the spreadsheet as "CSV UTF-8".',
    );
  }
  if (text.includes('\0'))
    return whole(1, 'found binary data, expected text', 'Save it from the spreadsheet as "CSV UTF-8".');
  try {
    const rows: string[][] = parse(text, {
      delimiter: separatorOf(text),
      trim: true,
      relax_column_count: true,
      skip_empty_lines: false,
    });
    return { rows, problems: [] };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const row = Number((error as CsvError & { records?: number }).records ?? 0) + 1;
    return whole(row, QUOTES[error.code] ?? `found ${error.message}, expected a table`, 'Save it again as CSV.');
  }
}

/** The sign that stands most often in the first row. */
function separatorOf(text: string): string {
  const first = text.split(/\r?\n/, 1)[0] ?? '';
  const count = (sign: string) => first.split(sign).length;
  return [',', ';', '\t'].reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}

/** A cell as spreadsheets call it: "G14". */
export function cellName(row: number, column: number): string {
  let letters = '';
  for (let n = column; n > 0; n = Math.floor((n - 1) / 26))
    letters = String.fromCharCode(65 + ((n - 1) % 26)) + letters;
  return `${letters}${row}`;
}
