/** Something wrong with a procedure or a ledger, placed in the content; the content reader prints it as its own problems. */
export interface LedgerProblem {
  /** Path inside the content folder. */
  file: string;
  line: number;
  column: number;
  /** Procedure step and item: "oil.drain opens oil-drained". */
  field: string;
  what: string;
  fix: string;
  /** The ledger item it is about; empty where it is about none. */
  item: string;
}
