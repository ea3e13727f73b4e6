import * as z from 'zod/mini'
import type { DeviceHere } from '../../command/wire-device.ts'
import type { CommandName } from '../../record/command-names.ts'
import { DeviceId, NOBODY, PersonId, ShopId } from '../../record/ids.ts'
import { weightOf } from '../../record/weight-of.ts'

/** Untouched for so long, a shared phone asks again who works at it, in ms. */
export const IDLE_MS = 10 * 60_000
const KEPT = 'fettleyard-shop-phone'

/** What the phone asks its hand, and waits for. Null: they let it be. */
export type Asking =
  | { readonly is: 'who'; readonly answer: (person: PersonId | null) => void }
  | {
      readonly is: 'code'
      readonly person: PersonId
      readonly command: CommandName
      /** What was wrong with the one before. */
      readonly wrong: string | null
      readonly answer: (code: string | null) => void
    }

/** A shop's phone, and who works at it now. */
export interface ShopPhone {
  /** Null on a phone that is somebody's own. */
  readonly here: DeviceHere | null
  readonly hand: PersonId | null
  readonly asking: Asking | null
}

const Here = z.object({
  id: DeviceId,
  name: z.string(),
  shop: ShopId,
  shopName: z.string(),
  demo: z.boolean(),
  hands: z.array(z.object({ person: PersonId, name: z.string(), hasCode: z.boolean() })),
})
/** `GET /api/device`, as this phone keeps it for when there is no network. */
const Kept = z.object({ here: Here, hand: z.nullable(PersonId), touchedMs: z.number() })

const none: ShopPhone = { here: null, hand: null, asking: null }
const listeners = new Set<() => void>()
let state: ShopPhone = none
let touchedMs = 0

function put(next: ShopPhone): void {
  state = next
  for (const listener of listeners) listener()
}

function keep(): void {
  const { here, hand } = state
  try {
    if (here === null) localStorage.removeItem(KEPT)
    else localStorage.setItem(KEPT, JSON.stringify({ here, hand, touchedMs }))
  } catch {
    // A browser that keeps nothing asks the server each time.
  }
}

/** What stands of the shop's phone; the same object until something of it is another. */
export const shopPhone = (): ShopPhone => state
/** On the server nobody's phone is known. */
export const noShopPhone = (): ShopPhone => none

/** Calls `listener` at each change until the returned function is called. */
export function subscribeShopPhone(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** Takes up what was kept on this phone; a name that has lain too long is gone. */
export function recallShopPhone(nowMs = Date.now()): void {
  try {
    const kept = Kept.safeParse(JSON.parse(localStorage.getItem(KEPT) ?? 'null'))
    if (!kept.success) return
    const isIdle = nowMs - kept.data.touchedMs > IDLE_MS
    touchedMs = kept.data.touchedMs
    put({ ...state, here: kept.data.here, hand: isIdle ? null : kept.data.hand })
  } catch {
    // Nothing was kept.
  }
}

/** Takes what the server says of this phone; null where it is the shop's no longer. Who left the shop works here no longer either. */
export function learnShopPhone(said: unknown): void {
  const here = Here.safeParse(said)
  if (!here.success) {
    // A press that waits for its hand is let be.
    state.asking?.answer(null)
    put(none)
    keep()
    return
  }
  const isHere = here.data.hands.some(({ person }) => person === state.hand)
  put({ ...state, here: here.data, hand: isHere ? state.hand : null })
  keep()
}

/** Says who works here now; null for nobody. */
export function takeOver(person: PersonId | null, nowMs = Date.now()): void {
  touchedMs = nowMs
  put({ ...state, hand: person })
  keep()
}

/** A press or a key on the phone. */
export function touchShopPhone(nowMs = Date.now()): void {
  if (state.hand === null) return
  // A name that lay too long isn't woken by the next one's thumb.
  if (nowMs - touchedMs > IDLE_MS) {
    takeOver(null, nowMs)
    return
  }
  touchedMs = nowMs
}

/** Looks whether the phone has lain too long under one name; what is typed into its forms stays. */
export function tireShopPhone(nowMs = Date.now()): void {
  if (state.hand !== null && nowMs - touchedMs > IDLE_MS) takeOver(null, nowMs)
  else keep()
}

function ask<Answer>(
  make: (answer: (said: Answer | null) => void) => Asking,
): Promise<Answer | null> {
  const { asking } = state
  // The one before is let be: only one thing is asked at a time.
  if (asking !== null) asking.answer(null)
  return new Promise((done) => {
    const answer = (said: Answer | null) => {
      if (state.asking === made) put({ ...state, asking: null })
      done(said)
    }
    const made = make(answer)
    put({ ...state, asking: made })
  })
}

/** Asks who works here; who is chosen works here from then on. */
export async function askWho(): Promise<PersonId | null> {
  const person = await ask<PersonId>((answer) => ({ is: 'who', answer }))
  if (person !== null) takeOver(person)
  return person
}

/** Asks a hand for their own code, for one signature. */
export const askCode = (
  person: PersonId,
  command: CommandName,
  wrong: string | null,
): Promise<string | null> => ask((answer) => ({ is: 'code', person, command, wrong, answer }))

/** Who presses on a shop's phone, and with which code where it is a signature. */
export interface Pressing {
  readonly device: DeviceId
  readonly person: PersonId
  readonly personName: string
  readonly code: string | null
}

/**
 * Asks what a press needs here; `own` where this phone is somebody's own, null where it was let be. Without a network nobody can
 * check a code: then it is asked for when the press goes out.
 */
export async function pressing(
  command: CommandName,
  isAway = false,
): Promise<Pressing | 'own' | null> {
  if (state.here === null) return 'own'
  const person = state.hand ?? (await askWho())
  const { here } = state
  if (person === null || here === null) return null
  const signs = weightOf[command] === 'signature' && !isAway
  const code = signs ? await askCode(person, command, null) : null
  if (signs && code === null) return null
  const personName = here.hands.find((hand) => hand.person === person)?.name ?? ''
  return { device: here.id, person, personName, code }
}

/** Who reads: on a shop's phone whoever works at it, else who is signed in. */
export const readerOn = (phone: ShopPhone, signedIn: PersonId): PersonId =>
  signedIn === NOBODY ? (phone.hand ?? NOBODY) : signedIn
