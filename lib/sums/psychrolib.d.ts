/** As much of the reference library as the test asks for; it has no types of its own. */
declare module 'psychrolib' {
  export const SI: number
  export function SetUnitSystem(system: number): void
  export function GetTDewPointFromRelHum(celsius: number, humidity: number): number
}
