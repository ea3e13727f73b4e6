import { CODE_LEAST, CODE_MOST, type CodeFault } from '../record/code-fault.ts'
import type { DeviceNeeds } from '../record/device-needs.ts'

/** What is wrong with a new code, and what to take. */
export const codeFaultWords: { readonly [F in CodeFault]: string } = {
  digits: `Take ${CODE_LEAST} to ${CODE_MOST} digits.`,
  same: 'The same digit over and over is what everybody tries first. Take another.',
  run: 'Digits in a row are what everybody tries first. Take others.',
  pattern: 'A pair that comes again is soon guessed. Take others.',
}

/** What a shop's phone is told to ask first. */
export const needsWords: { readonly [N in DeviceNeeds]: string } = {
  hand: 'Say who works here first. Nothing was changed.',
  code: 'This puts a name under it: sign with your own code.',
  'right code': 'That is not your code. Nothing was signed; try again.',
  'first code':
    'You have no code for this shop’s phones yet. A manager shows you one that works once, to set your own.',
  'own session': 'A yes like this isn’t given on a shared phone. Sign in as yourself on your own.',
}
