/** One calculation, as the methods page prints it and as a `Derivation` points to it. */
export interface Method {
  /** Key used in `Derivation.method`; a key "x.y.z" without a row of its own belongs to "x.y". */
  key: string;
  /** Its name within a sentence. */
  title: string;
  equation: string;
  /** Symbols with their units. */
  symbols: string[];
  sources: string[];
  valid?: string | undefined;
  error?: string | undefined;
  weaknesses: string[];
}
