import { coatCorrect } from '../coating/coat-correct.ts'
import { coatRecord } from '../coating/coat-record.ts'
import { coatStrip } from '../coating/coat-strip.ts'
import { colourAdd } from '../coating/colour-add.ts'
import { colourCardAgreed } from '../coating/colour-card-agreed.ts'
import { colourDescribe } from '../coating/colour-describe.ts'
import { colourRemove } from '../coating/colour-remove.ts'
import { filmRecord } from '../coating/film-record.ts'

/** Commands of the coating record; its screens fetch their rules as they open. */
export const coatingCommands = {
  'coat.record': coatRecord,
  'coat.correct': coatCorrect,
  'coat.strip': coatStrip,
  'film.record': filmRecord,
  'colour.add': colourAdd,
  'colour.describe': colourDescribe,
  'colour.cardAgreed': colourCardAgreed,
  'colour.remove': colourRemove,
}
