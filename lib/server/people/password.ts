import { hash, verify } from '@node-rs/argon2'

/** Argon2id after OWASP's password storage sheet: 19 MiB, two passes, one lane. */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 }
/** Long enough that length alone slows a guess; no rules about digits, which make worse passwords (NIST SP 800-63B). */
export const PASSWORD_LEAST = 10
const PASSWORD_MOST = 200

/** What is wrong with a new password, in words; null where it will do. */
export function passwordFault(password: string): string | null {
  if (password.length < PASSWORD_LEAST) {
    return `Take at least ${PASSWORD_LEAST} characters; a few words in a row are good.`
  }
  if (password.length > PASSWORD_MOST) return `Take at most ${PASSWORD_MOST} characters.`
  return null
}

/** The hash to keep; the library's default kind is Argon2id. */
export const hashPassword = (password: string): Promise<string> => hash(password, COST)

let nobodys: Promise<string> | undefined

/** Whether the password is right. Without an account it takes the same time and is wrong. */
export async function isPassword(known: string | null, password: string): Promise<boolean> {
  nobodys ??= hashPassword('of nobody, so that an unknown address takes as long')
  const right = await verify(known ?? (await nobodys), password.slice(0, PASSWORD_MOST))
  return right && known !== null
}
