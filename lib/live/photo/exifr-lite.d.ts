/** The reader's smaller build has no types of its own. */
declare module 'exifr/dist/lite.esm.mjs' {
  export { parse } from 'exifr'
}
