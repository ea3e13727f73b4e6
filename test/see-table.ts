import type { Kind } from '../lib/record/entity.ts'
import type { ViewName } from './see-samples.ts'

/**
 * Every field of every kind. A new field fails the test until it stands here, so that somebody has thought about who may
 * see it. Those after `|` are of a narrower scope than the rest.
 */
export const fields: { readonly [K in Kind]: string } = {
  project:
    'kind id name year description currency timeZone demo createdAt | standingConsentEach standingConsentTotal',
  party: 'kind id project name role lead shop bills leftAt',
  participant: 'kind id project party person since removedAt',
  assembly: 'kind id project name pieces custodian since host holdsFuel',
  stage:
    'kind id project number name group party assemblies host fits removes needsFitted needsOff needsBay exclusive hoursLeast hoursLikely hoursMost safety caution hazards precautionsAt precautionsBy airAgeMost dewMarginLeast humidityMost surfaceLeast surfaceMost inDate lays keys flats people trade madeFrom changeOrder decision handoverTo countersigns state startedAt startedBy workedBy pausedAt endedAt endedBy signedOffAt reported doubt removedAt',
  link: 'kind id project from to leastLagHours greatestLagHours why safety curesAt removedAt',
  check:
    'kind id project stage position type name unit least greatest points basis limitSource limitWanted needsInstrument state value firstValue text files by at removedAt',
  signOff: 'kind id project stage party type person at withdrawnAt reason',
  hold: 'kind id project stage point name party person state setAt invitedAt visitAt noticeDays clearedAt clearedBy remark removedAt',
  concession: 'kind id project stage rule entity reason file needs parties person at withdrawnAt',
  ask: 'kind id project stage rule entity from to text person at closedAt',
  handover:
    'kind id project assemblies from to stage state condition care pieces files preparedAt releasedAt releasedBy receivedAt receivedBy receivedPieces outcome remarks receivedFiles receivedByName signature',
  changeOrder:
    'kind id project number title text reason party bears state days files raisedAt raisedBy sentAt answeredAt answeredBy proof answer | shown shownHash',
  changeLine:
    'kind id project changeOrder party position text quantity unit unitPrice net taxRate sentAt removedAt',
  estimateLine: 'kind id project party position text type net taxRate withdrawnAt',
  decision:
    'kind id project question text party chooser decideBy state askedAt chosen chosenAt chosenBy reason',
  decisionOption: 'kind id project decision party chooser position text | net',
  part: 'kind id project name number party supplier stages state wantedAt orderedAt arrivedAt inspectedAt inspectedBy remark withdrawnAt | price',
  promise: 'kind id project part date by madeAt remark',
  openWindow: 'kind id project assembly bay from to openedAt closedAt',
  slot: 'kind id project shop bay assembly stage party from to state askedAt agreedAt agreedBy window reason',
  note: 'kind id project on type sharing business text party person at withdrawnAt',
  told: 'kind id project entity party command person at confirmedAt confirmedBy',
  reading:
    'kind id project stage check values entered enteredUnit least greatest verdict instrument calibratedOn place takenAt at by remark replacedBy reason',
  airReading: 'kind id project stage party bay air surface humidity takenAt at by',
  metalReading: 'kind id project stage celsius takenAt at by',
  step: 'kind id project stage position text tools caution tickedAt tickedBy removedAt',
  coat: 'kind id project assembly stage party product name batch ratio thinner coats endedAt keyedWith keyedAt colour air remark by at sandedAt sandedTo sandedPlace offAt',
  film: 'kind id project assembly stage panel point microns metal method zeroed gauge at by',
  colour:
    'kind id project party name code variant batch cardAt cardBy gun keepsake at by removedAt',
  tinter: 'kind id project colour position name grams batch removedAt',
  inDate: 'kind id project party thing name person minutes doneOn until by at withdrawnAt',
  milestone:
    'kind id project stage party payer name agreedAt agreedBy metAt metBy remark removedAt | net',
  shop: 'kind id name currency timeZone taxRegistered taxRate opensAt closesAt demo createdAt',
  membership: 'kind id shop person role since removedAt',
  bay: 'kind id shop name type retiredAt',
}

/** The columns, left to right. */
export const columns: readonly ViewName[] = [
  'owner',
  'lead',
  'lead hand',
  'engines',
  'engines hand',
  'castings',
  'trim',
  'glass',
  'insurer',
  'guest',
]

/**
 * Who sees what. `all`: every field. `open`: all but those after `|`, which are null. `stub`: that it exists. `.`: nothing.
 * Engines bill the owner, castings bill the lead; glass is a supplier, the insurer reads, the guest receives for trim.
 */
export const whoSees: { readonly [sample: string]: string } = {
  project: 'all all open open open open open open open stub',
  party: 'all all all all all all all all all stub',
  participant: 'all all all all all all all stub all stub',
  assembly: 'all all all all all all all all all stub',
  stage: 'all all all all all all all stub all stub',
  link: 'all all all all all all all stub all stub',
  check: 'all all all all all all all stub all stub',
  signOff: 'all all all all all all all stub all stub',
  hold: 'all all all all all all all stub all stub',
  concession: 'all all all all all all all stub all stub',
  ask: 'all all all all all all all stub all stub',
  'handover of engines to lead': 'all all all all all all all stub all stub',
  'handover of lead to trim': 'all all all all all all all stub all all',
  'handover of lead to glass': 'all all all all all all all all all stub',
  'change order of engines': 'all open open all open stub stub stub stub stub',
  'change order of castings': 'stub all open stub stub all stub stub stub stub',
  'change line of engines': 'all . . all . . . . . .',
  'change line of castings': '. all . . . all . . . .',
  'draft of engines': 'stub stub stub all stub stub stub stub stub stub',
  'line on the draft of engines': '. . . all . . . . . .',
  'estimate line of lead': 'all all . . . . . . . .',
  'estimate line of engines': 'all . . all . . . . . .',
  'estimate line of castings': '. all . . . all . . . .',
  'decision of lead for owner': 'all all all stub stub stub stub stub stub stub',
  'decision of castings for engines': 'stub all all all all all stub stub stub stub',
  'option of lead for owner': 'all all open . . . . . . .',
  'option of castings for engines': '. all open all open all . . . .',
  'part of lead by glass': 'all all open open open open open open open stub',
  'part of engines': 'all open open all open open open stub open stub',
  'promise by glass': 'all all all all all all all all all stub',
  'promise of liners': 'all all all all all all all stub all stub',
  openWindow: 'all all all all all all all stub all stub',
  slot: 'all all all all all all all stub all stub',
  'note, shared': 'all all all all all all all . all .',
  'note, private to engines': '. . . all all . . . . .',
  'note, business of engines': 'all all all all all . . . . .',
  'note, business of castings': '. all all . . all . . . .',
  reading: 'all all all all all all all stub all stub',
  airReading: 'all all all all all all all stub all stub',
  metalReading: 'all all all all all all all stub all stub',
  step: 'all all all all all all all stub all stub',
  coat: 'all all all all all all all stub all stub',
  film: 'all all all all all all all stub all stub',
  colour: 'all all all all all all all stub all stub',
  tinter: 'all all all all all all all stub all stub',
  inDate: 'all all all all all all all stub all stub',
  milestone: 'all open open all open open open stub open stub',
  told: 'all all all all all all all stub all stub',
  shop: 'all all all all all all all stub all stub',
  membership: 'all all all all all all all stub all stub',
  bay: 'all all all all all all all stub all stub',
}
