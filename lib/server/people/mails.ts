import * as z from 'zod/mini'
import { PersonId, ProjectId, ShopId } from '../../record/ids.ts'
import { Instant } from '../../record/scalars.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { Mail } from '../mail.ts'
import type { Job } from '../save.ts'
import { type Account, accountById } from './accounts.ts'
import { addLink } from './links.ts'

/** The queue that mails go by. */
export const MAIL = 'mail'

/** Why a mail goes, and to whom. Its link is made when it goes: none lies in the queue. */
const MailJob = z.discriminatedUnion('type', [
  z.strictObject({
    type: z.literal('invitation'),
    person: PersonId,
    record: z.union([ShopId, ProjectId]),
  }),
  z.strictObject({
    type: z.literal('sign-in'),
    person: PersonId,
    /** The page that they wanted. */
    next: z.nullable(z.string()),
    askedAt: Instant,
  }),
])
type MailJob = z.infer<typeof MailJob>

/** Whoever asked to sign in has given up after this time, in ms. */
const ASKED_MS = 20 * 60_000

/** The work of sending a mail. */
export const mailJob = (mail: MailJob): Job => ({ name: MAIL, payload: mail })

/** Sends the mail of a job; none to who is not there any more. @throws where no server took it */
export async function sendMail(
  prisma: PrismaClient,
  mail: Mail,
  origin: string,
  payload: unknown,
): Promise<void> {
  const job = MailJob.parse(payload)
  const account = await accountById(prisma, job.person)
  if (account === null || account.demo) return
  if (job.type === 'sign-in' && Date.parse(job.askedAt) + ASKED_MS < Date.now()) return
  const { subject, text } = await written(prisma, origin, job, account)
  await mail.send(account.email, subject, text)
}

async function written(
  prisma: PrismaClient,
  origin: string,
  job: MailJob,
  { id, name }: Account,
): Promise<{ readonly subject: string; readonly text: string }> {
  if (job.type === 'invitation') {
    const { token } = await addLink(prisma, 'invitation', { person: id, record: job.record })
    return {
      subject: 'You are invited to a car’s record',
      text: `${name}, you are invited to Fettleyard, where the shops and the owner of one car keep its record.\n\n${origin}/join/${token}\n\nThe link is for you alone, and good for 14 days.\n`,
    }
  }
  const { token } = await addLink(prisma, 'magic', { person: id })
  const way = job.next === null ? '' : `?next=${encodeURIComponent(job.next)}`
  return {
    subject: 'Sign in to Fettleyard',
    text: `${name}, this link signs you in. It works once, within 20 minutes:\n\n${origin}/sign-in/link/${token}${way}\n\nYou didn’t ask for it? Then leave it alone.\n`,
  }
}
