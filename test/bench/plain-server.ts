import { createServer } from 'node:http'
import pg from 'pg'
import { Server } from 'socket.io'

/**
 * What the lane is measured against: a bare `http` and `pg` handler that does the same writes as the command, by BEGIN …
 * FOR UPDATE … COMMIT. It checks nobody and decides nothing. Arguments: the database; `live` where each commit is to be told
 * to all who have its page open. Says its port.
 */
const pool = new pg.Pool({ connectionString: process.argv[2], max: 20 })

interface Press {
  readonly project: string
  readonly assembly: string
  readonly name: string
  readonly pieces: number
  readonly key: string
  readonly person: string
  readonly party: string
  readonly at: string
}

const HASH = 'ab'.repeat(32)

async function carryOut(press: Press): Promise<number> {
  const client = await pool.connect()
  try {
    await client.query('begin')
    const { rows } = await client.query<{ recordVersion: number }>({
      name: 'lock',
      text: 'select "recordVersion" from "Project" where "id" = $1 for update',
      values: [press.project],
    })
    const version = (rows[0]?.recordVersion ?? 0) + 1
    await client.query({
      name: 'assembly',
      text: `update "Assembly" set "name" = $2, "pieces" = $3, "version" = $4 where "id" = $1 and "project" = $5`,
      values: [press.assembly, press.name, press.pieces, version, press.project],
    })
    const { assembly, name, pieces } = press
    const value = { input: { assembly, name, pieces }, entities: [{ kind: 'assembly', ...press }] }
    await client.query({
      name: 'entry',
      text: `insert into "JournalEntry" ("record", "sequence", "at", "happenedAt", "person", "party", "role", "command", "key", "previousHash", "hash", "parts")
             values ($1, $2, $3, $3, $4, $5, 'manager', 'assembly.describe', $6, $7, $7, $8)`,
      values: [
        press.project,
        version,
        press.at,
        press.person,
        press.party,
        press.key,
        HASH,
        JSON.stringify([{ scope: 'open', salt: HASH, hash: HASH, value }]),
      ],
    })
    await client.query({
      name: 'key',
      text: `insert into "IdempotencyKey" ("person", "key", "payloadHash", "answer") values ($1, $2, $3, $4)`,
      values: [
        press.person,
        press.key,
        HASH,
        JSON.stringify([{ record: press.project, sequence: version }]),
      ],
    })
    await client.query({
      name: 'version',
      text: 'update "Project" set "recordVersion" = $2 where "id" = $1',
      values: [press.project, version],
    })
    await client.query('commit')
    client.release()
    return version
  } catch (error) {
    client.release(true)
    throw error
  }
}

const PAGE = `<!doctype html><meta charset="utf-8"><title>Plain</title><output></output>
<script src="/socket.io/socket.io.js"></script>
<script>
  io({ transports: ['websocket'] }).on('changed', ({ name }) => {
    document.querySelector('output').textContent = name
  })
</script>`

const server = createServer((request, response) => {
  if (request.method === 'GET') {
    response.writeHead(200, { 'content-type': 'text/html; charset=utf-8' })
    response.end(PAGE)
    return
  }
  const chunks: Buffer[] = []
  request.on('data', (chunk: Buffer) => chunks.push(chunk))
  request.on('end', () => {
    const press: Press = JSON.parse(Buffer.concat(chunks).toString())
    carryOut(press).then(
      (version) => {
        io?.emit('changed', press)
        const body = JSON.stringify({ version })
        response.writeHead(200, {
          'content-type': 'application/json',
          'content-length': body.length,
        })
        response.end(body)
      },
      (error: unknown) => {
        response.writeHead(500)
        response.end(String(error))
      },
    )
  })
})
const io = process.argv[3] === 'live' ? new Server(server) : undefined
server.listen(0, '127.0.0.1', () => {
  const address = server.address()
  console.log(`port ${typeof address === 'object' ? address?.port : 0}`)
})
