import type { CommandName } from '../../record/command-names.ts'
import type { PersonId } from '../../record/ids.ts'
import type { Outcome } from '../http.ts'
import { asksForCode } from './asks-for-code.ts'
import { putCode, takeCode } from './codes.ts'
import { refreshShopPhone } from './refresh-shop-phone.ts'
import { askCode } from './shop-phone.ts'

/** What a press came to that its hand let be: nothing was sent. */
export const letBe: Outcome = {
  status: 403,
  message:
    'Nothing was sent: it wasn’t signed, or nobody said who works here. What you entered is still here.',
}

/** A signature on its way, by its key. */
export interface Signed {
  readonly person: PersonId
  readonly command: CommandName
  readonly key: string
}

/**
 * Asks the hand for their code as long as the answer wants one, and sends it again with it: with the same key, so that it is signed
 * once. Null where they let it be.
 */
export async function signUntilRight<Came extends Outcome | { readonly status: 'kept' }>(
  { person, command, key }: Signed,
  first: Came,
  send: () => Promise<Came>,
): Promise<Came | null> {
  let came = first
  while (asksForCode(came)) {
    // A manager may have taken the code away, or they set it elsewhere, since this phone last asked.
    if (came.needs === 'first code') await refreshShopPhone()
    const code = await askCode(person, command, came.needs === 'right code' ? came.message : null)
    if (code === null) return null
    putCode(key, code)
    came = await send()
  }
  takeCode(key)
  return came
}
