import { once } from 'node:events'
import { createServer, type Socket } from 'node:net'

/** A mail as it came over the wire. */
export type Mail = { readonly to: string; readonly text: string }
/** A mail server (SMTP, RFC 5321: as much of it as a sender needs) that keeps what it is given. */
export type Mailbox = {
  readonly url: string
  /** Waits for the next mail to that address. */
  readonly next: (to: string) => Promise<Mail>
  readonly all: readonly Mail[]
  /** Takes none of the next so many mails: it is out of order for a while. */
  readonly refuse: (mails: number) => void
  readonly close: () => void
}

/** Opens one on a free port of this machine. */
export async function aMailbox(): Promise<Mailbox> {
  const all: Mail[] = []
  const waiting = new Set<() => void>()
  let refusing = 0
  const server = createServer((socket) =>
    talk(socket, (mail) => {
      if (refusing > 0) {
        refusing--
        return false
      }
      all.push(mail)
      for (const look of waiting) look()
      return true
    }),
  )
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const address = server.address()
  const port = typeof address === 'object' && address !== null ? address.port : 0
  let read = 0
  return {
    url: `smtp://127.0.0.1:${port}`,
    all,
    next: (to) =>
      new Promise((found) => {
        const look = () => {
          const at = all.findIndex((mail, i) => i >= read && mail.to === to)
          const mail = all[at]
          if (mail === undefined) return
          read = at + 1
          waiting.delete(look)
          found(mail)
        }
        waiting.add(look)
        look()
      }),
    refuse: (mails) => {
      refusing = mails
    },
    close: () => void server.close(),
  }
}

/** `keep` says whether it took the mail. */
function talk(socket: Socket, keep: (mail: Mail) => boolean): void {
  let to = ''
  let body: string[] | undefined
  let rest = ''
  const say = (line: string) => socket.write(`${line}\r\n`)
  const hear = (line: string): void => {
    if (body !== undefined) {
      if (line !== '.') {
        body.push(line)
        return
      }
      const kept = keep({ to, text: readable(body.join('\n')) })
      body = undefined
      say(kept ? '250 kept' : '451 not just now')
    } else if (/^(EHLO|HELO|MAIL|RSET)/i.test(line)) say('250 go on')
    else if (/^RCPT/i.test(line)) {
      to = /<([^>]*)>/.exec(line)?.[1] ?? ''
      say('250 go on')
    } else if (/^DATA/i.test(line)) {
      body = []
      say('354 go on')
    } else {
      say('221 bye')
      socket.end()
    }
  }
  say('220 here')
  socket.on('error', () => socket.destroy())
  socket.on('data', (chunk) => {
    const lines = (rest + chunk.toString()).split('\r\n')
    rest = lines.pop() ?? ''
    for (const line of lines) hear(line)
  })
}

/** Quoted-printable (RFC 2045) undone, as far as ASCII goes. */
const readable = (text: string): string =>
  text
    .replace(/=\n/g, '')
    .replace(/=([0-9A-F]{2})/g, (_, code) => String.fromCharCode(Number.parseInt(code, 16)))
