import type { Column } from '../build-order/csv/columns.ts'
import type { Fault, Named } from '../build-order/csv/reading-fault.ts'
import { listed } from './names.ts'

/** What is wrong in a file, in words: where, what, and the way out. */
export interface FaultWords {
  readonly where: string
  readonly fact: string
  readonly wayOut: string
}

const columnNames: { readonly [C in Column]: string } = {
  stage: 'stage',
  shop: 'shop',
  assembly: 'assembly',
  'hours least': 'hours least',
  'hours likely': 'hours likely',
  'hours most': 'hours most',
  after: 'after',
  checks: 'checks',
  hold: 'hold',
}

const kinds = {
  shop: 'shop',
  stage: 'stage',
  assembly: 'assembly',
  who: 'party, role or person',
  check: 'kind of check',
} as const

const meant = (nearest: string | null, otherwise: string): string =>
  nearest === null ? otherwise : `Did you mean “${nearest}”? ${otherwise}`

const otherwise = {
  shop: 'Correct the name, or accept it as a new party.',
  stage: 'Write the name as it stands in its line, or the number of that line.',
  who: 'Write a party, a role such as owner or lead, or a person of a party.',
  check: 'A check begins with reading, photo, tick or document.',
} as const

/** `2 Prime › 3 Paint › 2 Prime` */
const circle = (stages: readonly Named[]): string =>
  [...stages, ...stages.slice(0, 1)].map(({ line, name }) => `${line} ${name}`).join(' › ')

function told(fault: Fault, locale: string): readonly [fact: string, wayOut: string] {
  switch (fault.what) {
    case 'quote':
      return [
        'A quote is opened here and never closed',
        'Close it, or double a quote that belongs to the text.',
      ]
    case 'no headings':
      return [
        'There are no headings',
        `The first line names the columns: ${listed(Object.values(columnNames), locale)}.`,
      ]
    case 'too many lines':
      return [
        `There are ${fault.lines} lines`,
        `At most ${fault.most} can be imported at once. Divide the file.`,
      ]
    case 'column missing':
      return [`There is no column “${fault.name}”`, 'Add it; every stage needs a name and a shop.']
    case 'column twice':
      return [
        `There are two columns “${fault.name}”`,
        'Leave one of them out, or call it otherwise.',
      ]
    case 'too many cells':
      return [
        `There is more than the headings name: “${fault.text}”`,
        'A text with the separator in it, or a decimal comma, stands in quotes.',
      ]
    case 'empty':
      return ['Nothing is written here', 'Fill it in.']
    case 'too long':
      return [`This has ${fault.letters} letters`, 'A name has 200 at most.']
    case 'not a number':
      return [`“${fault.text}” is no number`, 'Write digits, with a decimal point or comma.']
    case 'not hours':
      return [`“${fault.text}” can’t be hours`, 'Write hours from 0 to 100,000.']
    case 'hours go down':
      return ['The hours go down', 'Least, likely and most must go up, or be the same.']
    case 'unknown':
      return [
        `There is no ${kinds[fault.kind]} “${fault.name}”`,
        meant(fault.nearest, otherwise[fault.kind]),
      ]
    case 'ambiguous': {
      const on = listed(fault.lines.map(String), locale)
      return [
        `Several have the name “${fault.name}”${on === '' ? '' : `: lines ${on}`}`,
        fault.kind === 'stage'
          ? 'Write the number of the line, counted from the first under the headings.'
          : fault.kind === 'who'
            ? 'Write the party, or Name (Party) for a person.'
            : 'Give them different names first.',
      ]
    }
    case 'no stage on line':
      return [
        `There is no stage on line ${fault.number}`,
        'Lines are counted from the first under the headings, blank ones too.',
      ]
    case 'itself':
      return ['A stage can’t wait for itself', 'Take it out.']
    case 'twice':
      return [`“${fault.name}” stands here twice`, 'Leave one of them out.']
    case 'lag twice':
      return [`“${fault.name}” has two lags of one kind`, 'Write one +…h and one <…h at most.']
    case 'lags cross':
      return [
        `The window shuts before the cure has run: “${fault.name}”`,
        'The hours after < are the greatest lag, those after + the least.',
      ]
    case 'check without name':
      return [`“${fault.text}” has no name`, 'Write kind and name, such as: photo each side.']
    case 'limits with blanks':
      return [
        `It isn’t clear what the limits are: “${fault.text}”`,
        'Write limits without blanks, such as: reading oil pressure 3.1..4.5 bar. A number that belongs to the name has a backslash before its blank.',
      ]
    case 'limits cross':
      return [`The least is more than the greatest: “${fault.text}”`, 'Write the least first.']
    case 'not a hold':
      return [`“${fault.text}” is no hold point`, 'Write hold: who, or witness: who.']
    case 'circle':
      return [
        'These stages wait for each other in a circle',
        `${circle(fault.stages)}. Leave out one of these links.`,
      ]
    case 'exists':
      return [
        `“${fault.name}” is there already, as stage ${fault.number}`,
        'Leave it out, or say that it comes all the same.',
      ]
  }
}

/** A fault in the words of this locale. Lines are counted as a spreadsheet counts its rows. */
export function csvFault(fault: Fault, locale: string): FaultWords {
  const line = fault.line === null ? 'The file' : `Line ${fault.line}`
  const where = fault.column === null ? line : `${line}, column “${columnNames[fault.column]}”`
  const [fact, wayOut] = told(fault, locale)
  return { where, fact, wayOut }
}

/** Why a line would not be imported. */
export const csvLeftOut = (left: Named & { readonly behind: number | null }): string =>
  left.behind === null
    ? `Line ${left.line}, ${left.name}: it has a fault`
    : `Line ${left.line}, ${left.name}: it waits for line ${left.behind}, which is left out`
