import type { Coat } from '@/lib/record/entities/coating.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { moment } from '@/lib/words/dates.ts'
import { figure } from '@/lib/words/money.ts'
import { atStart } from '@/lib/words/names.ts'
import type { Reader } from '@/lib/words/reader.ts'

/** A coat by what it is: `Colour, Ivory`. */
export function coatTitle(coat: Coat, record: ProjectRecord): string {
  const colour = coat.colour === null ? undefined : record.colours.rows.get(coat.colour)?.name
  return [atStart(coat.product), coat.name ?? colour].filter((part) => part != null).join(', ')
}

/** How the ground under a coat was readied. */
export const keyedWords = (coat: Coat, reader: Reader): string =>
  coat.keyedWith === null
    ? 'laid within its window'
    : `over a surface keyed with ${coat.keyedWith}${coat.keyedAt === null ? '' : `, ${moment(coat.keyedAt, reader)}`}`

/** Micrometres as they are read. */
export const microns = (value: number, reader: Reader): string =>
  `${figure(value, reader.locale, 0)} µm`
