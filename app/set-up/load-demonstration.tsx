'use client'
import { useEffect, useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'

const DemoProgress = z.object({
  state: z.enum(['none', 'loading', 'loaded', 'failed']),
  done: z.number(),
  total: z.number(),
  message: z.nullable(z.string()),
})
type DemoProgress = z.infer<typeof DemoProgress>

const ASK_EVERY_MS = 500

/** Loads three invented cars with their shops and people, and says how far it is. */
export function LoadDemonstration() {
  const [progress, setProgress] = useState<DemoProgress>()
  const [wrong, setWrong] = useState<string>()
  const [asked, setAsked] = useState(false)
  const loading = asked || progress?.state === 'loading'

  useEffect(() => {
    if (!loading) return
    const look = async () => {
      const answer = await askServer(DemoProgress, '/api/installation/demo')
      if (!answer.ok) return
      setProgress(answer.data)
      if (answer.data.state === 'loaded') window.location.assign('/sign-in')
      if (answer.data.state === 'failed') {
        setAsked(false)
        setWrong(answer.data.message ?? 'It could not be loaded. Nothing was kept; try again.')
      }
    }
    const timer = setInterval(look, ASK_EVERY_MS)
    return () => clearInterval(timer)
  }, [loading])

  const load = async () => {
    setWrong(undefined)
    setAsked(true)
    const answer = await askServer(z.unknown(), '/api/installation/demo', posting({}))
    if (answer.ok) return
    setAsked(false)
    setWrong(answer.message)
  }

  const done = progress === undefined || progress.total === 0 ? 0 : progress.done / progress.total
  return (
    <section className="sheet stack" id="look-around">
      <div className="head">
        <h2>Or look around first</h2>
      </div>
      <p>
        The demonstration is a 1961 saloon eight months into its restoration, with a lead shop, six
        specialists, an owner, and two more cars that share their weeks. All of it is invented.
      </p>
      {loading ? (
        <div className="stack tight">
          <progress
            className="bar"
            aria-label="Loading the demonstration"
            max={100}
            value={Math.round(done * 100)}
          />
          <p aria-live="polite">
            {progress === undefined || progress.total === 0
              ? 'Getting ready…'
              : `${progress.done} of ${progress.total} presses played. ${progress.message ?? ''}`}
          </p>
        </div>
      ) : (
        <button type="button" className="btn btn-line btn-wide" onClick={() => void load()}>
          Load the demonstration
        </button>
      )}
      {wrong !== undefined && (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      )}
      <p className="small soft">Only while nothing else exists. Its doors need no password.</p>
    </section>
  )
}
