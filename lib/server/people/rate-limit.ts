import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible'

/** A wrong password can be tried this often for one e-mail address from one network address, in 15 minutes, */
const BY_PAIR = 10
/** this often for it from everywhere, so that a stranger can't easily lock somebody out, */
const BY_EMAIL = 60
/** and this often from one network address: a whole shop may be behind it. */
const BY_ADDRESS = 120
const QUARTER_HOUR_S = 900
/** Links and invitations that one person or e-mail address may ask for in an hour. */
const LINKS = 30
/** Tokens that one network address may try in an hour; they can't be guessed. */
const TOKENS = 600
/** Bytes of photos and papers that a person may send in an hour: some five hundred photos, as a phone sends them, */
const PERSON_BYTES = 500_000_000
/** and that may come by one link for a guest: a receipt has a few. */
const GUEST_BYTES = 120_000_000
/** A file counts for this much at least, so that nobody fills the disk with small ones. */
const LEAST_BYTES = 100_000
const HOUR_S = 3600
/** A wrong code can be tried this often for one hand on one phone, in five minutes, */
const BY_HAND_AND_PHONE = 5
const FIVE_MINUTES_S = 300
/** and this often for one hand on all phones of the shop, in an hour: of 10,000 codes that finds none, and locks nobody out for good. */
const BY_HAND = 40

/** Thrown where something was tried too often; the door answers 429. */
export class TooOften extends Error {
  override name = 'TooOften'
  readonly seconds: number
  constructor(seconds: number, why = 'Tried too often.') {
    super(
      `${why} Wait ${seconds < 90 ? 'a minute' : `${Math.ceil(seconds / 60)} minutes`} and try again.`,
    )
    this.seconds = seconds
  }
}

/** Counts attempts, in this process. */
export type Limits = {
  /** Counts a try to sign in. @throws {TooOften} */
  readonly signIn: (email: string, address: string) => Promise<void>
  /** A right password takes back its own try, and forgets the wrong ones before it from there. */
  readonly signedIn: (email: string, address: string) => Promise<void>
  /** Counts a link asked for by or for somebody. @throws {TooOften} */
  readonly link: (who: string) => Promise<void>
  /** Counts a try with a hand's own code. @throws {TooOften} */
  readonly code: (shop: string, person: string, device: string) => Promise<void>
  /** A right code takes back its own try, and forgets the wrong ones before it on that phone. */
  readonly signed: (shop: string, person: string, device: string) => Promise<void>
  /** Counts a token that was shown. @throws {TooOften} */
  readonly token: (address: string) => Promise<void>
  /** Counts the bytes of a file that a person, or a guest by a link, is about to send. @throws {TooOften} */
  readonly bytes: (from: 'person' | 'guest', who: string, bytes: number) => Promise<void>
}

/** Counters that start at nothing. */
export function openLimits(): Limits {
  const byPair = new RateLimiterMemory({ points: BY_PAIR, duration: QUARTER_HOUR_S })
  const byEmail = new RateLimiterMemory({ points: BY_EMAIL, duration: QUARTER_HOUR_S })
  const byAddress = new RateLimiterMemory({ points: BY_ADDRESS, duration: QUARTER_HOUR_S })
  const links = new RateLimiterMemory({ points: LINKS, duration: HOUR_S })
  const tokens = new RateLimiterMemory({ points: TOKENS, duration: HOUR_S })
  const volume = {
    person: new RateLimiterMemory({ points: PERSON_BYTES, duration: HOUR_S }),
    guest: new RateLimiterMemory({ points: GUEST_BYTES, duration: HOUR_S }),
  }
  const byHandAndPhone = new RateLimiterMemory({
    points: BY_HAND_AND_PHONE,
    duration: FIVE_MINUTES_S,
  })
  const byHand = new RateLimiterMemory({ points: BY_HAND, duration: HOUR_S })
  const plain = (email: string): string => email.trim().toLowerCase()
  const pair = (email: string, address: string): string => `${plain(email)} ${address}`
  return {
    async signIn(email, address) {
      await take(byAddress, address)
      await take(byPair, pair(email, address))
      await take(byEmail, plain(email))
    },
    async signedIn(email, address) {
      await byAddress.reward(address)
      await byEmail.reward(plain(email))
      await byPair.delete(pair(email, address))
    },
    async code(shop, person, device) {
      await take(byHandAndPhone, `${shop} ${person} ${device}`)
      await take(byHand, `${shop} ${person}`)
    },
    async signed(shop, person, device) {
      await byHandAndPhone.delete(`${shop} ${person} ${device}`)
      await byHand.reward(`${shop} ${person}`)
    },
    link: (who) => take(links, plain(who)),
    token: (address) => take(tokens, address),
    bytes: (from, who, bytes) =>
      take(volume[from], who, Math.max(LEAST_BYTES, bytes), tooMuch(volume[from].points)),
  }
}

const tooMuch = (bytes: number): string =>
  `That is more than ${bytes / 1e6} MB of files in an hour. None was lost.`

async function take(
  limiter: RateLimiterMemory,
  key: string,
  points = 1,
  why?: string,
): Promise<void> {
  try {
    await limiter.consume(key, points)
  } catch (refused) {
    if (refused instanceof RateLimiterRes) {
      throw new TooOften(Math.max(1, Math.ceil(refused.msBeforeNext / 1000)), why)
    }
    throw refused
  }
}
