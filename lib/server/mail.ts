import { createTransport } from 'nodemailer'
import { encodeQR } from 'qr'
import type { HandedLink } from '../command/wire-access.ts'
import type { Instant } from '../record/scalars.ts'
import type { Env } from './env.ts'

/** A server that takes no mail within this time is told as a failure, in ms. */
const SMTP_MS = 10_000

/** Sends mails where SMTP_URL says by whom; else everything goes by hand. What is sent goes by `people/mails.ts`. */
export type Mail = {
  readonly can: boolean
  /** @throws where the server didn't take it */
  readonly send: (to: string, subject: string, text: string) => Promise<void>
}

/** The mail that the settings name. */
export function openMail({ smtpUrl, mailFrom }: Env): Mail {
  if (smtpUrl === undefined)
    return { can: false, send: async () => Promise.reject(new Error('No mail is sent from here.')) }
  const transport = createTransport({
    url: smtpUrl,
    connectionTimeout: SMTP_MS,
    greetingTimeout: SMTP_MS,
    socketTimeout: SMTP_MS,
  })
  return {
    can: true,
    async send(to, subject, text) {
      try {
        await transport.sendMail({ from: mailFrom, to, subject, text })
      } catch (error) {
        const why = error instanceof Error ? error.message : String(error)
        console.error(`fettleyard: a mail was not taken, and is tried again: ${why}`)
        throw error
      }
    },
  }
}

/** A link to hand over: its address and the same as a QR code. */
export const handedLink = (url: string, expiresAt: Instant, mailed: boolean): HandedLink => ({
  url,
  qr: encodeQR(url, 'svg', { border: 2 }),
  mailed,
  expiresAt,
})
