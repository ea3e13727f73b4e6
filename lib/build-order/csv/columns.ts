/** The columns of a build order, as the export writes them. */
export const columns = [
  'stage',
  'shop',
  'assembly',
  'hours least',
  'hours likely',
  'hours most',
  'after',
  'checks',
  'hold',
] as const
/** The name of a column, as it stands in a heading. */
export type Column = (typeof columns)[number]

/** The column that a heading means, in any case; undefined where it means none. */
export function columnOf(heading: string): Column | undefined {
  const words = heading
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
  return columns.find((column) => column === words)
}
