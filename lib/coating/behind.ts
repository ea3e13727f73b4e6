import type { Coat } from '../record/entities/coating.ts'

/** How a panel's stack differs from its shell's at one product. */
export interface Difference {
  readonly product: Coat['product']
  readonly what: 'missing' | 'extra' | 'other colour' | 'other batch' | 'batch not recorded'
  readonly shell: Coat | null
  readonly panel: Coat | null
}

/**
 * Where a panel stands behind its shell, or was made up otherwise: product by product, from metal outwards. A colour matches by its formula and
 * by its batch; a batch that nobody recorded matches nothing.
 */
export function behindShell(shell: readonly Coat[], panel: readonly Coat[]): Difference[] {
  const products = [...new Set([...shell, ...panel].map(({ product }) => product))]
  return products.flatMap((product): Difference[] => {
    const on = shell.findLast((coat) => coat.product === product) ?? null
    const own = panel.findLast((coat) => coat.product === product) ?? null
    const said = (what: Difference['what']) => ({ product, what, shell: on, panel: own })
    if (own === null) return [said('missing')]
    if (on === null) return [said('extra')]
    if (on.colour !== own.colour) return [said('other colour')]
    if (product !== 'colour') return []
    if (on.batch === null || own.batch === null) return [said('batch not recorded')]
    return on.batch === own.batch ? [] : [said('other batch')]
  })
}
