// Run inside the page: each stands alone and needs nothing from outside.

/** What a thumb must hit and is smaller than 44 px either way; links inside a sentence are as high as its lines. */
export function crampedTargets(): string[] {
  const LEAST = 44
  const isInline = (e: Element | null) => e !== null && getComputedStyle(e).display === 'inline'
  const inSentence = (e: Element) => {
    if (!e.matches('a') || !isInline(e)) return false
    let block = e.parentElement
    while (isInline(block)) block = block?.parentElement ?? null
    return (block?.textContent ?? '').trim() !== (e.textContent ?? '').trim()
  }
  const wanted =
    'a[href], button, input:not([type=hidden]), select, textarea, summary, [role=button]'
  return [...document.querySelectorAll(wanted)].flatMap((e) => {
    const own = e.getBoundingClientRect()
    const label = e.matches('[type=checkbox], [type=radio]') ? e.closest('label') : null
    const { width, height } = label?.getBoundingClientRect() ?? own
    if (!e.checkVisibility() || e.matches('.skip') || inSentence(e)) return []
    if (Math.round(width) >= LEAST && Math.round(height) >= LEAST) return []
    const words = (e.textContent ?? '').trim().slice(0, 40)
    return [`too small: ${e.tagName} "${words}" ${Math.round(width)}×${Math.round(height)}`]
  })
}

/** Presses that stand higher on the page than one before them in the source, in another row. */
export function outOfOrder(): string[] {
  const main = document.querySelector('main')
  if (main === null) return ['there is no main']
  const scrolls = (e: Element) => {
    let up: Element | null = e.parentElement
    while (up !== null && up !== main && !/auto|scroll/.test(getComputedStyle(up).overflowY))
      up = up.parentElement
    return up !== main
  }
  const presses = [...main.querySelectorAll('a[href], button, input, select, textarea, summary')]
    .filter((e) => e.checkVisibility() && e.closest('.sheet-foot') === null && !scrolls(e))
    .map((e) => ({ e, at: e.getBoundingClientRect() }))
  return presses.flatMap(({ e, at }, i) => {
    const before = presses[i - 1]
    if (before === undefined || at.bottom > before.at.top + 1) return []
    // The next column begins above where the one before it ends; the keys of a pad are one thing.
    if (at.left >= before.at.right - 1 || e.closest('.keys') !== null) return []
    return [
      `out of order: "${(e.textContent ?? '').trim().slice(0, 40)}" stands above what it follows`,
    ]
  })
}

/** That the page is wider than the screen, and by which elements. */
export function pastTheEdge(): string[] {
  const page = document.documentElement
  // A phone zooms out to what is too wide, and its inner width with it: this one stays.
  const width = page.clientWidth
  if (page.scrollWidth <= width) return []
  const clipped = (e: Element) => {
    for (let up = e.parentElement; up !== null; up = up.parentElement) {
      if (getComputedStyle(up).overflowX !== 'visible' && up !== page && up !== document.body)
        return true
    }
    return false
  }
  const wide = [...document.querySelectorAll('body *')]
    .filter((e) => e.getBoundingClientRect().right > width + 1 && !clipped(e))
    .map((e) => `${e.tagName}.${String(e.getAttribute('class'))}`)
  return [
    `at ${width} px it scrolls sideways to ${page.scrollWidth}: ${wide.slice(0, 4).join(', ')}`,
  ]
}

/** Presses whose edges lie nearer than 8 px to each other. The rail's lie wall to wall, and so do the rows of a table. */
export function tooClose(): string[] {
  const APART = 8
  const main = document.querySelector('main')
  if (main === null) return ['there is no main']
  const presses = [
    ...main.querySelectorAll('.btn, button, .line, .pick, summary, select, textarea'),
  ]
    .filter((e) => e.checkVisibility() && e.closest('.rail, table') === null)
    .map((e) => ({ e, at: e.getBoundingClientRect() }))
  return presses.flatMap(({ e, at }, i) =>
    presses.slice(i + 1).flatMap((other) => {
      if (e.contains(other.e) || other.e.contains(e)) return []
      const beside = Math.max(other.at.left - at.right, at.left - other.at.right)
      const under = Math.max(other.at.top - at.bottom, at.top - other.at.bottom)
      if (Math.max(beside, under) > APART - 0.5) return []
      const words = [e, other.e].map((one) => (one.textContent ?? '').trim().slice(0, 30))
      return [`too close: "${words[0]}" and "${words[1]}"`]
    }),
  )
}

/** Words that are wider than what holds them and are cut off there, or run out of it. */
export function cutOff(): string[] {
  const told = new Set<string>()
  const width = document.documentElement.clientWidth
  for (const e of document.querySelectorAll('main *, nav *')) {
    const style = getComputedStyle(e)
    const words = [...e.childNodes].some(
      (n) => n.nodeType === 3 && (n.textContent ?? '').trim() !== '',
    )
    if (
      !words ||
      !e.checkVisibility() ||
      style.display === 'inline' ||
      e.closest('.vh, .sr-only, svg')
    )
      continue
    const scrolls = /auto|scroll/.test(style.overflowX)
    if (scrolls || e.matches('input, textarea, select, option')) continue
    if (e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0)
      told.add(
        `at ${width} px cut off: ${e.tagName}.${e.className} "${(e.textContent ?? '').trim().slice(0, 40)}"`,
      )
  }
  return [...told].slice(0, 6)
}

/** In forced colours: marks that have the colour of what they lie on, and presses that nothing frames. */
export function unseenMarks(): string[] {
  const groundOf = (e: Element | null): string => {
    for (let up = e; up !== null; up = up.parentElement) {
      const { backgroundColor } = getComputedStyle(up)
      if (!/, 0\)$|transparent/.test(backgroundColor)) return backgroundColor
    }
    return 'canvas'
  }
  const marks = [...document.querySelectorAll('.mark')]
    .filter((e) => e.checkVisibility())
    .filter((e) => getComputedStyle(e).backgroundColor === groundOf(e.parentElement))
    .map((e) => `forced colours: ${e.className} can't be seen`)
  const presses = [...document.querySelectorAll('.btn, .press')]
    .filter((e) => e.checkVisibility())
    .filter((e) => Number.parseFloat(getComputedStyle(e).borderTopWidth) < 1)
    .map((e) => `forced colours: "${(e.textContent ?? '').trim().slice(0, 30)}" has no frame`)
  return [...new Set([...marks, ...presses])]
}
