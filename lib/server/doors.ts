import type { Installation } from '../command/wire-access.ts'
import { type Files, openFiles } from './files.ts'
import { addDemoPhone } from './installation/demo-phone.ts'
import type { Demonstration } from './installation/demonstration.ts'
import { openDemonstration } from './installation/demonstration.ts'
import { readInstallation } from './installation/installation.ts'
import { type Jobs, openJobs } from './jobs.ts'
import type { Looker } from './lane/actor.ts'
import { type Follow, openFollow } from './live/follow.ts'
import { openGrants } from './live/grants.ts'
import { openRooms, type Watched } from './live/rooms.ts'
import { isProject, recordIdOf } from './load.ts'
import { openMail } from './mail.ts'
import { type Devices, openDevices } from './people/devices.ts'
import { type HandCodes, openHandCodes } from './people/hand-codes.ts'
import { type Invitations, openInvitations } from './people/invitations.ts'
import { MAIL, sendMail } from './people/mails.ts'
import { type Names, openNames } from './people/names.ts'
import { openPhoneLinks, type PhoneLinks } from './people/phone-links.ts'
import { type Limits, openLimits } from './people/rate-limit.ts'
import { openReceipts, type Receipts } from './people/receipts.ts'
import { openSessions, type Sessions } from './people/session.ts'
import { openSignIn, type SignIn } from './people/sign-in.ts'
import { openSigning, type Signing } from './people/signing.ts'
import { openPublish } from './publish.ts'
import type { Commands } from './run-command.ts'
import type { Services } from './services.ts'
import { openUploads, type Uploads } from './uploads.ts'
import { openReading, type Reading } from './views/reading.ts'
import { openViews, type Views } from './views/views.ts'

/** Everything that people, phones and pages come in by, over the one way to change a record. */
export type Doors = Services & {
  readonly commands: Commands
  readonly sessions: Sessions
  /** Phones that are signed in for a shop, and what hands sign with there. */
  readonly devices: Devices
  readonly handCodes: HandCodes
  readonly signing: Signing
  readonly phoneLinks: PhoneLinks
  /** What a visitor may know. */
  readonly installation: () => Promise<Installation>
  readonly limits: Limits
  readonly signIn: SignIn
  /** Mails on their way; null where none are sent from here. */
  readonly jobs: Jobs | null
  readonly names: Names
  readonly reading: Reading
  readonly views: Views
  readonly files: Files
  readonly uploads: Uploads
  readonly invitations: Invitations
  readonly receipts: Receipts
  readonly demonstration: Demonstration
  /** One press signs in as a person of the demonstration: on this machine only, unless a setting says so. */
  readonly demoDoors: boolean
  readonly secure: boolean
  readonly close: () => Promise<void>
}

/** Opens them, and passes on each change to those who follow it. */
export function openDoors(services: Services, commands: Commands): Doors {
  const { env, pool, prisma, io, origin, secret } = services
  const { enter, memberships, records } = commands
  const secure = origin.startsWith('https:')
  const demoDoors = env.demoDoors || (env.loopback && isHere(origin))
  const sessions = openSessions(pool, secret, secure)
  const devices = openDevices(prisma, pool, secret, secure)
  const handCodes = openHandCodes(prisma)
  const limits = openLimits()
  const mail = openMail(env)
  const jobs = mail.can
    ? openJobs(pool, prisma, { [MAIL]: (payload) => sendMail(prisma, mail, origin, payload) })
    : null
  const names = openNames(prisma)
  const reading = openReading(prisma, records, memberships)
  const files = openFiles(prisma, env.dataDir)
  const uploads = openUploads(files, env.dataDir)
  const rooms = openRooms()
  const follow: Follow = openFollow(io, rooms, { sessions, devices }, pool, {
    look: (who, record) => look(reading, who, record),
    forget: memberships.forget,
    async version(id) {
      const record = recordIdOf(id)
      return record === undefined ? null : ((await records.get(record))?.record.version ?? null)
    },
  })
  const publish = openPublish(io, rooms, names)
  const granted = openGrants(sessions, memberships, follow)
  const stopListening = commands.onCommit((move) => {
    granted(move)
    publish(move)
  })
  const load = async () => (await import('../../seed/load.ts')).loadDemonstration
  const addPhone = () => addDemoPhone(prisma, devices, handCodes)
  const demonstration = openDemonstration(
    services,
    enter,
    env.dataDir,
    load,
    addPhone,
    commands.forget,
  )
  return {
    ...services,
    commands,
    sessions,
    devices,
    handCodes,
    signing: openSigning(handCodes, limits),
    phoneLinks: openPhoneLinks(prisma, devices, reading, origin),
    async installation() {
      const { state } = await demonstration.progress()
      const open = { demoDoors, loading: state === 'loading', mail: jobs !== null }
      return readInstallation(prisma, open)
    },
    limits,
    signIn: openSignIn(prisma, limits, demoDoors),
    jobs,
    names,
    reading,
    views: openViews(pool, reading, names),
    files,
    uploads,
    invitations: openInvitations(prisma, enter, reading, jobs, limits, origin),
    receipts: openReceipts(prisma, enter, reading, files, origin),
    demonstration,
    demoDoors,
    secure,
    async close() {
      stopListening()
      uploads.close()
      follow.close()
      await jobs?.close()
    },
  }
}

/** Behind a proxy that others reach, a server that listens on this machine only is open to them all the same. */
const isHere = (origin: string): boolean =>
  ['localhost', '127.0.0.1', '[::1]'].includes(new URL(origin).hostname)

async function look(reading: Reading, who: Looker, id: string): Promise<Watched | null> {
  const record = recordIdOf(id)
  if (record === undefined) return null
  const found = await reading.any(record)
  if (found === null) return null
  if (isProject(found)) {
    const view = await reading.viewOf(who, found)
    return view === null ? null : { record: found.id, view }
  }
  const role = await reading.roleIn(who, found)
  return role === null ? null : { record: found.id, role }
}
