/** The reader's builds for browsers have no types of their own. */
declare module 'exifr/dist/lite.esm.mjs' {
  export { parse } from 'exifr'
}
declare module 'exifr/dist/full.esm.mjs' {
  export { parse } from 'exifr'
}
