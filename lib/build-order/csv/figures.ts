/** Blanks and apostrophes between thousands. */
const grouping = /(?<=\d)[\s'’](?=\d{3}(?!\d))/g
const inEnglish = /^[+-]?\d{1,3}(?:,\d{3})+\.\d+$/
const onTheContinent = /^[+-]?\d{1,3}(?:\.\d{3})+,\d+$/
const figure = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i

/**
 * The number that a cell says, with a decimal point or comma; null where it says none.
 * A lone comma is a decimal comma, even before three digits: that is how spreadsheets in half of Europe write.
 */
export function readFigure(text: string): number | null {
  const bare = text.trim().replace(grouping, '')
  const dotted = inEnglish.test(bare)
    ? bare.replaceAll(',', '')
    : onTheContinent.test(bare)
      ? bare.replaceAll('.', '').replace(',', '.')
      : bare.replace(',', '.')
  if (!figure.test(dotted)) return null
  const value = Number(dotted)
  return Number.isFinite(value) ? value : null
}

/** A number as a cell says it: with a decimal point, read back to the same number. Nothing for null. */
export const writeFigure = (value: number | null): string => (value === null ? '' : String(value))
