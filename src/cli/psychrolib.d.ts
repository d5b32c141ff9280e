/** The part of the psychrolib package (1.1.1, carrying PsychroLib 2.5.0) that checks and benchmarks use. */
declare module 'psychrolib' {
  interface PsychroLib {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    /** Over ice below 0.01 °C [Pa]. */
    GetSatVapPres(temperatureC: number): number;
    /** Relative humidity as a share, over ice below 0.01 °C; dew point, below 0 °C frost point [°C]. */
    GetTDewPointFromRelHum(temperatureC: number, relHum: number): number;
    GetTDewPointFromVapPres(temperatureC: number, vapourPa: number): number;
    GetRelHumFromVapPres(temperatureC: number, vapourPa: number): number;
    GetVapPresFromRelHum(temperatureC: number, relHum: number): number;
  }
  const psychrolib: PsychroLib;
  export default psychrolib;
}
