import { createTransport } from 'nodemailer'
import { renderSVG } from 'uqr'
import type { HandedLink } from '../command/wire-access.ts'
import type { Instant } from '../record/scalars.ts'
import type { Env } from './env.ts'

/** A server that takes no mail within this time is told as a failure, in ms. */
const SMTP_MS = 10_000

/** Sends mails where SMTP_URL says by whom; else everything goes by hand. */
export type Mail = {
  readonly can: boolean
  /** Whether the server took it. */
  readonly send: (to: string, subject: string, text: string) => Promise<boolean>
}

/** The mail that the settings name. */
export function openMail({ smtpUrl, mailFrom }: Env): Mail {
  if (smtpUrl === undefined) return { can: false, send: async () => false }
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
        return true
      } catch (error) {
        console.error('fettleyard: a mail was not taken:', error)
        return false
      }
    },
  }
}

/** A link to hand over: its address and the same as a QR code. */
export const handedLink = (url: string, expiresAt: Instant, mailed: boolean): HandedLink => ({
  url,
  qr: renderSVG(url, { border: 2 }),
  mailed,
  expiresAt,
})
