import type { PersonId } from '../../record/ids.ts'
import { Instant, Sha256 } from '../../record/scalars.ts'
import type { WaitingFile } from '../phone/phone-store.ts'
import { changeFile, fileOnPhone, filesOnPhone, putFile } from './file-shelf.ts'

/** What is to be kept on the phone until the server has it. */
export interface FileToKeep {
  /** Where it belongs: `/api/projects/prj_…/files`, or a receipt's folder. */
  readonly folder: string
  readonly person: PersonId | null
  readonly name: string
  readonly bytes: Blob
  readonly thumb: Blob | null
  readonly use: string
}

/** Puts a file on the phone's shelf, to be sent from there, and gives its name: what is in it. */
export async function keepFile(file: FileToKeep): Promise<Sha256> {
  const sha256 = await sha256Of(await file.bytes.arrayBuffer())
  const address = `${file.folder}/${sha256}`
  const there = await fileOnPhone(address)
  const upload = there?.upload ?? null
  const addedAt = there?.addedAt ?? Instant.parse(new Date().toISOString())
  await putFile({ ...file, address, sha256, addedAt, upload, no: null })
  return sha256
}

/** The files that this person chose in this field and whose press isn't done. */
export async function filesOfField(
  use: string,
  person: PersonId | null,
): Promise<readonly WaitingFile[]> {
  return (await filesOnPhone()).filter((file) => file.use === use && file.person === person)
}

/** The press that names the files of a field is done, or waits in the outbox: what hasn't arrived goes on waiting, without the field. */
export async function letGoOfField(use: string): Promise<void> {
  const chosen = (await filesOnPhone()).filter((file) => file.use === use)
  for (const { address } of chosen) {
    await changeFile(address, (file) => (file.bytes === null ? null : { ...file, use: null }))
  }
}

/** Takes a file off the phone: it was left out before its press. */
export const dropFile = (address: string): Promise<void> => changeFile(address, () => null)

async function sha256Of(bytes: ArrayBuffer): Promise<Sha256> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return Sha256.parse(Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join(''))
}
