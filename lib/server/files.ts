import { createHash } from 'node:crypto'
import { existsSync, openAsBlob } from 'node:fs'
import { mkdir, open, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { PersonId, ProjectId } from '../record/ids.ts'
import type { Sha256 } from '../record/scalars.ts'
import { freshKey } from './fresh-key.ts'
import type { PrismaClient } from './generated/client.ts'

/** A phone's photo has some 5 MB, a scanned sheet some 20. */
export const FILE_MOST_BYTES = 30_000_000

/** What may be kept, by the bytes it begins with: what a browser calls it counts for nothing. */
const KINDS = [
  { type: 'image/jpeg', begins: [0xff, 0xd8, 0xff], from: 0 },
  { type: 'image/png', begins: [0x89, 0x50, 0x4e, 0x47], from: 0 },
  { type: 'image/webp', begins: [0x57, 0x45, 0x42, 0x50], from: 8 },
  { type: 'application/pdf', begins: [0x25, 0x50, 0x44, 0x46], from: 0 },
] as const
/** A kind of file that is kept. */
export type FileType = (typeof KINDS)[number]['type']

/** Why a file was not kept. */
export type FileFault = 'too large' | 'another file' | 'unknown type'

/** A file that is there. `by`: who sent it. */
export interface KeptFile {
  readonly type: string
  readonly bytes: number
  readonly by: string
  readonly open: () => Promise<Blob>
}

/** Files of the projects, on disk: kept once a project, found by what is in them. */
export type Files = {
  /** Keeps the bytes if they are what `sha256` says. */
  readonly keep: (
    project: ProjectId,
    sha256: Sha256,
    bytes: ReadableStream<Uint8Array>,
    by: PersonId,
  ) => Promise<FileFault | null>
  readonly read: (project: ProjectId, sha256: Sha256) => Promise<KeptFile | null>
}

/** Files under a folder of their own in the data folder. */
export function openFiles(prisma: PrismaClient, dataDir: string): Files {
  const folderOf = (project: ProjectId) => join(dataDir, 'files', project)
  return {
    async keep(project, sha256, bytes, by) {
      const folder = folderOf(project)
      const path = join(folder, sha256)
      await mkdir(folder, { recursive: true, mode: 0o700 })
      const half = join(folder, `${sha256}.${freshKey()}`)
      try {
        const written = await write(half, bytes)
        if (written === 'too large') return written
        if (written.sha256 !== sha256) return 'another file'
        const type = typeOf(written.head)
        if (type === null) return 'unknown type'
        await rename(half, path)
        await prisma.fileBlob.createMany({
          data: { project, sha256, bytes: written.bytes, type, uploadedBy: by },
          skipDuplicates: true,
        })
        return null
      } finally {
        await rm(half, { force: true })
      }
    },
    async read(project, sha256) {
      const where = { project_sha256: { project, sha256 } }
      const row = await prisma.fileBlob.findUnique({ where })
      const path = join(folderOf(project), sha256)
      if (row === null || !existsSync(path)) return null
      const { type, bytes, uploadedBy: by } = row
      return { type, bytes: Number(bytes), by, open: () => openAsBlob(path, { type }) }
    },
  }
}

interface Written {
  readonly sha256: string
  readonly bytes: number
  readonly head: Uint8Array
}

/** Writes a stream to the disk for good, and tells what it was; stops at the greatest size. */
async function write(
  path: string,
  bytes: ReadableStream<Uint8Array>,
): Promise<Written | 'too large'> {
  const hash = createHash('sha256')
  const file = await open(path, 'wx', 0o600)
  let size = 0
  let head = new Uint8Array()
  try {
    for await (const chunk of bytes) {
      size += chunk.byteLength
      if (size > FILE_MOST_BYTES) return 'too large'
      if (head.length < 16) head = Uint8Array.from([...head, ...chunk.subarray(0, 16)])
      hash.update(chunk)
      await file.write(chunk)
    }
    await file.sync()
  } finally {
    await file.close()
  }
  return { sha256: hash.digest('hex'), bytes: size, head }
}

const typeOf = (head: Uint8Array): FileType | null =>
  KINDS.find(({ begins, from }) => begins.every((byte, i) => head[from + i] === byte))?.type ?? null
