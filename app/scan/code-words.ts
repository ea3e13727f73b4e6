import { type ReadCode, type ScannedText, spacedCode } from '@/lib/custody/tag-code.ts'
import type { Found } from './find-assembly.ts'
import type { CameraState } from './use-camera.ts'

/** What is wrong with a typed code, and the way out. */
export function typedWrong(read: ReadCode, typed: string): string | undefined {
  if (read.ok) return undefined
  switch (read.why) {
    case 'empty':
      return 'Type the code that stands under the squares of the tag.'
    case 'length':
      return `A code has eight figures and letters; this has ${typed.replaceAll(/[\s\-–—.]/g, '').length}.`
    case 'symbol':
      return 'A code has figures and letters only, and no U.'
    case 'misread':
      return 'One of them is another, or two changed places. Read it once more.'
  }
}

/** How much of a foreign code is shown. */
const SHOWN = 60

/** What is said of a scanned text that is no tag to look up. */
export function scannedWords(text: string, scanned: ScannedText): string {
  switch (scanned.is) {
    case 'other yard':
      return `That tag belongs to another yard, at ${scanned.host}. It is known there only.`
    case 'misread':
      return 'The tag was misread. Hold still, or type its code.'
    case 'page':
      return 'That leads to a page of this yard, but hangs on no assembly.'
    default:
      return `That is no tag of this yard. It says: “${text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text}”`
  }
}

/** What is said where a tag leads nowhere. */
export function foundWords(code: string, found: Exclude<Found, { is: 'found' }>): string {
  const tag = `Tag ${spacedCode(code)}`
  switch (found.is) {
    case 'not for you':
      return `${tag} is not for you: you have no part in its car, or there is none. Whoever invited you can bring you in.`
    case 'signed out':
      return `${tag}: sign in first, and it opens.`
    case 'no answer':
      return `${tag} isn’t kept on this phone, and no answer came. Press again when there is a network.`
  }
}

/** What stands in the camera's place while it shows nothing. */
export const cameraWords: { readonly [S in Exclude<CameraState, 'open'>]: string } = {
  closed:
    'The camera looks for a tag’s squares and for nothing else. No picture is kept, and none leaves this phone.',
  opening: 'Opening the camera. The phone may ask whether this page may use it: say yes.',
  refused:
    'This page may not use the camera. Allow it beside the address or in the phone’s settings, then press again. Or type the code.',
  none: 'This device has no camera. Type the code.',
  busy: 'Another program has the camera. Close it and press again, or type the code.',
  unable: 'This browser gives no camera to this page. Type the code.',
}
