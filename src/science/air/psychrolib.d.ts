/** The part of psychrolib 1.1.1 that is used here; the package ships no types. SI: °C, Pa, shares as fractions. */
declare module 'psychrolib' {
  interface Psychrolib {
    readonly SI: number
    SetUnitSystem(system: number): void
    GetHumRatioFromTWetBulb(dryCelsius: number, wetCelsius: number, pascals: number): number
    GetRelHumFromHumRatio(dryCelsius: number, kilogramsPerKilogram: number, pascals: number): number
    GetTDewPointFromHumRatio(dryCelsius: number, kilogramsPerKilogram: number, pascals: number): number
    GetSatVapPres(celsius: number): number
    GetSatHumRatio(celsius: number, pascals: number): number
  }
  const psychrolib: Psychrolib
  export default psychrolib
}
