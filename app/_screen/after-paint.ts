/** How long the first paint may keep the rest waiting, in ms: a big photo must not hold up the presses. */
const LONGEST_MS = 3000

/**
 * Done when the served page was painted, or a thumb is on it already. Until then the line belongs to what is to be seen. On the
 * server at once.
 */
export const painted: Promise<void> =
  typeof window === 'undefined'
    ? Promise.resolve()
    : new Promise((done) => {
        const soon = () => {
          // A tab in the background paints nothing, and gets no frames.
          if (document.hidden) done()
          else onFirstPaint(done)
        }
        if (document.readyState === 'complete') soon()
        else addEventListener('load', soon, { once: true })
        for (const touch of ['pointerdown', 'keydown', 'input'])
          addEventListener(touch, () => done(), { once: true, capture: true })
        setTimeout(done, LONGEST_MS)
      })

/** Calls back once the first content is on the screen; two frames on where the browser doesn't say when that was. */
function onFirstPaint(done: () => void): void {
  if (!PerformanceObserver.supportedEntryTypes.includes('paint'))
    return void requestAnimationFrame(() => requestAnimationFrame(done))
  const seen = new PerformanceObserver((entries) => {
    if (entries.getEntriesByName('first-contentful-paint').length === 0) return
    seen.disconnect()
    done()
  })
  seen.observe({ type: 'paint', buffered: true })
}

/** How often a piece of the program is asked for while there is a network, and the wait between in ms. */
const TRIES = 4
const WAIT_MS = 1500

const until = (ms: number): Promise<void> =>
  new Promise((done) => {
    addEventListener('online', () => done(), { once: true })
    setTimeout(done, ms)
  })

/**
 * Loads a piece of the program after the first paint. Without a network it waits for one: the served page stays meanwhile.
 * @throws where it can't be had though there is a network: what was served is of an older version
 */
export async function afterPaint<Piece>(load: () => Promise<Piece>): Promise<Piece> {
  await painted
  for (let tries = 1; ; tries++) {
    try {
      return await load()
    } catch (error) {
      if (typeof window === 'undefined') throw error
      if (tries >= TRIES && navigator.onLine) throw error
      await until(WAIT_MS * tries)
    }
  }
}
