declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: number
    SetUnitSystem(system: number): void
    GetHumRatioFromRelHum(temperatureC: number, humidityShare: number, pressurePa: number): number
    GetMoistAirDensity(temperatureC: number, humidityRatio: number, pressurePa: number): number
  }
  export default psychrolib
}
