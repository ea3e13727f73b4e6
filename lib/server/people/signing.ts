import { type CodeFault, codeFault } from '../../record/code-fault.ts'
import { NOBODY, PersonId } from '../../record/ids.ts'
import { weightOf } from '../../record/weight-of.ts'
import type { SessionActor } from '../lane/actor.ts'
import { readRequest } from '../lane/command-request.ts'
import type { HandCodes } from './hand-codes.ts'
import type { OnPhone } from './looker.ts'
import type { Limits } from './rate-limit.ts'

/** Who presses on a shop's phone, and whether they signed. */
export type Signing = {
  /** Who says that they press, and how their code compares where the press is a signature. @throws {TooOften} */
  readonly whoPresses: (
    on: OnPhone,
    presser: string | undefined,
    code: string | undefined,
    raw: unknown,
  ) => Promise<SessionActor>
  /** Sets a hand's first code at the phone, with one that a manager showed. @throws {TooOften} */
  readonly setFirst: (
    on: OnPhone,
    said: { readonly person: PersonId; readonly once: string; readonly code: string },
  ) => Promise<'set' | 'not that one' | CodeFault>
}

/** Signing by the hands' own codes; wrong ones are counted by person and phone. */
export function openSigning(codes: HandCodes, limits: Limits): Signing {
  return {
    async whoPresses({ phone }, presser, code, raw) {
      const by = PersonId.safeParse(presser)
      const who = { person: by.success ? by.data : NOBODY, phone, proof: null, provedAt: null }
      const read = readRequest(raw)
      if (!by.success || 'issues' in read) return who
      if (weightOf[read.request.name] !== 'signature') return who
      if (code !== undefined) await limits.code(phone.shop, by.data, phone.id)
      const is = await codes.check(phone.shop, by.data, code)
      if (is === 'right') await limits.signed(phone.shop, by.data, phone.id)
      return { ...who, code: is }
    },
    async setFirst({ phone }, { person, once, code }) {
      const fault = codeFault(code)
      if (fault !== null) return fault
      await limits.code(phone.shop, person, phone.id)
      if (!(await codes.setByOnce(phone.shop, person, once, code))) return 'not that one'
      await limits.signed(phone.shop, person, phone.id)
      return 'set'
    },
  }
}
