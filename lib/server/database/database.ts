import pg from 'pg'

/** Connections of one node; several nodes share the database's 100 or more. */
const CONNECTIONS = 20

/** A pool on the database. A connection that breaks while idle is replaced, and told on standard error. */
export function openPool(url: string): pg.Pool {
  const pool = new pg.Pool({ connectionString: url, max: CONNECTIONS })
  pool.on('error', (error) => {
    // One that still says goodbye when Postgres stops has nothing more to do.
    if (!pool.ending) console.error(`fettleyard: a database connection broke: ${error.message}`)
  })
  // One that breaks while it is held tells whoever asks of it; an error that nobody hears would end the process.
  pool.on('connect', (client) => client.on('error', () => {}))
  return pool
}
