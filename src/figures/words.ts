/**
 * What a picture needs to speak the household's language: its words and the household's way with dates and units. The page
 * hands them in, so that the pictures themselves stay the same in the build and in the browser.
 */
import type { IsoDate } from '../planner/household.ts';

export interface FigureLanguage {
  /** "Dec"; 1–12. */
  monthShort(month: number): string;
  monthName(month: number): string;
  date(iso: IsoDate): string;
  /** A value in the household's units: "−20 °C". */
  amount(value: number, unit: string, digits?: number): string;
  words: FigureWords;
}

export interface FigureWords {
  ring: {
    title: string;
    description(names: string): string;
    caption: string;
    head: string[];
    today: string;
    bandOf(name: string): string;
  };
  battery: {
    title(name: string): string;
    description(charges: number, threshold: string, margin: string): string;
    caption(name: string): string;
    head: string[];
    charge: string;
    threshold(text: string): string;
    stateOfCharge: string;
    expected: string;
    coldest: string;
    margin: string;
    /** Of a battery that does not freeze: what stands for "Freezes at", and for `margin`. */
    storage: { head: string; margin: string };
    below(temperature: string): string;
    atLeast(margin: string): string;
    today: string;
    reading: string;
    event: { charge: string; reading: string; unusable: string };
  };
  air: {
    title(name: string): string;
    description(low: string, high: string): string;
    caption(name: string): string;
    head: string[];
    temperature: string;
    dewPoint: string;
    wet: string;
    frost: string;
    condensation: string;
    hours: string;
    unsayable: string;
    unsayableShort: string;
  };
  strip: {
    title(name: string): string;
    description(assemblies: string, jobs: string): string;
    off: string;
    on: string;
    minutes(minutes: number): string;
    behind(names: string): string;
  };
}
