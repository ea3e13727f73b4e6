import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible'

/** A wrong password can be tried this often for one address of mail, and from one network address, in 15 minutes. */
const BY_EMAIL = 10
const BY_ADDRESS = 100
const QUARTER_HOUR_S = 900
/** Links and invitations that one network address or person may ask for in an hour. */
const LINKS = 20
const HOUR_S = 3600

/** Thrown where something was tried too often; the door answers 429. */
export class TooOften extends Error {
  override name = 'TooOften'
  readonly seconds: number
  constructor(seconds: number) {
    super(
      `Tried too often. Wait ${seconds < 90 ? 'a minute' : `${Math.ceil(seconds / 60)} minutes`} and try again.`,
    )
    this.seconds = seconds
  }
}

/** Counts attempts, in this process. */
export type Limits = {
  /** Counts a try to sign in. @throws {TooOften} */
  readonly signIn: (email: string, address: string) => Promise<void>
  /** A right password forgets the wrong ones before it, for that account only. */
  readonly signedIn: (email: string) => Promise<void>
  /** Counts a link asked for, or a token tried. @throws {TooOften} */
  readonly link: (who: string) => Promise<void>
}

/** Counters that start at nothing. */
export function openLimits(): Limits {
  const byEmail = new RateLimiterMemory({ points: BY_EMAIL, duration: QUARTER_HOUR_S })
  const byAddress = new RateLimiterMemory({ points: BY_ADDRESS, duration: QUARTER_HOUR_S })
  const links = new RateLimiterMemory({ points: LINKS, duration: HOUR_S })
  return {
    async signIn(email, address) {
      await take(byAddress, address)
      await take(byEmail, email.trim().toLowerCase())
    },
    async signedIn(email) {
      await byEmail.delete(email.trim().toLowerCase())
    },
    link: (who) => take(links, who),
  }
}

async function take(limiter: RateLimiterMemory, key: string): Promise<void> {
  try {
    await limiter.consume(key)
  } catch (refused) {
    if (refused instanceof RateLimiterRes) {
      throw new TooOften(Math.max(1, Math.ceil(refused.msBeforeNext / 1000)))
    }
    throw refused
  }
}
