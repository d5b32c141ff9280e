/**
 * The register of calculations: what the methods page prints, and the keys that a `Derivation` may name.
 */
export interface Method {
  /** Key used in `Derivation.method`. */
  key: string;
  /** In the middle of a sentence: "Why …". */
  title: string;
  equation: string;
  /** Symbols with their units. */
  symbols: string[];
  sources: string[];
  valid?: string;
  error?: string;
  weaknesses: string[];
  /** Files of published values in tests/published that it is checked against: "battery.json". */
  published: string[];
}

export const METHODS: readonly Method[] = [];
