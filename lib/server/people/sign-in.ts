import { Instant } from '../../record/scalars.ts'
import type { SignedIn } from '../for-pages.ts'
import type { PrismaClient } from '../generated/client.ts'
import { type Account, accountByEmail, accountById } from './accounts.ts'
import { takeLink } from './links.ts'
import { isPassword } from './password.ts'
import type { Limits } from './rate-limit.ts'
import type { Session } from './session.ts'

/** The ways in, each limited. They answer null for any reason, so that nobody learns which addresses have an account. */
export type SignIn = {
  /** @throws {TooOften} */
  readonly byPassword: (
    email: string,
    password: string,
    address: string,
  ) => Promise<SignedIn | null>
  /** By a link that was mailed; it works once. @throws {TooOften} */
  readonly byLink: (token: string, address: string) => Promise<SignedIn | null>
  /** By one press, as a person of the demonstration, where its doors are open. */
  readonly asDemo: (person: string) => Promise<SignedIn | null>
  /** The same person proves it again. @throws {TooOften} */
  readonly prove: (session: Session, password: string, address: string) => Promise<Session | null>
}

const now = (): Instant => Instant.parse(new Date().toISOString())

const signedIn = ({ id, name }: Account, proof: SignedIn['proof']): SignedIn => ({
  person: id,
  name,
  proof,
  provedAt: now(),
})

/** The session that begins with a proof given now. */
export function sessionOf(person: Account['id'], proof: SignedIn['proof']): Session {
  const at = now()
  return { person, issuedAt: at, proof, provedAt: at }
}

/** The ways in; `demoDoors` where one press may do. */
export function openSignIn(prisma: PrismaClient, limits: Limits, demoDoors: boolean): SignIn {
  async function byPassword(
    email: string,
    password: string,
    address: string,
  ): Promise<SignedIn | null> {
    await limits.signIn(email, address)
    const account = await accountByEmail(prisma, email)
    if (!(await isPassword(account?.passwordHash ?? null, password))) return null
    await limits.signedIn(email, address)
    return account === null ? null : signedIn(account, 'password')
  }
  return {
    byPassword,
    async byLink(token, address) {
      await limits.token(address)
      const link = await takeLink(prisma, 'magic', token)
      const account = link?.person ? await accountById(prisma, link.person) : null
      return account === null ? null : signedIn(account, 'mailed code')
    },
    async asDemo(person) {
      const account = demoDoors ? await accountById(prisma, person) : null
      return account?.demo === true ? signedIn(account, 'demonstration') : null
    },
    async prove(session, password, address) {
      const account = await accountById(prisma, session.person)
      if (account === null) return null
      const again = await byPassword(account.email, password, address)
      if (again?.person !== session.person) return null
      return { ...session, proof: again.proof, provedAt: again.provedAt }
    },
  }
}
