/**
 * The ids so that each stands behind all that it waits for; otherwise as they were given. What waits for itself in a circle comes
 * last.
 */
export function inOrder(
  ids: readonly string[],
  ties: readonly { readonly from: string; readonly to: string }[],
): readonly string[] {
  const known = new Set(ids)
  const waits = new Map(ids.map((id) => [id, 0]))
  const followers = new Map<string, string[]>()
  for (const { from, to } of ties) {
    if (!known.has(from) || !known.has(to)) continue
    waits.set(to, (waits.get(to) ?? 0) + 1)
    const after = followers.get(from)
    if (after === undefined) followers.set(from, [to])
    else after.push(to)
  }
  const order = ids.filter((id) => waits.get(id) === 0)
  for (const id of order) {
    for (const next of followers.get(id) ?? []) {
      const left = (waits.get(next) ?? 0) - 1
      waits.set(next, left)
      if (left === 0) order.push(next)
    }
  }
  const placed = new Set(order)
  return [...order, ...ids.filter((id) => !placed.has(id))]
}
