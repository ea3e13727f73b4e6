import type { Kind } from '../../record/entity.ts'

/** The table of each kind of entity; columns are named as the fields. */
export const tableOf: { readonly [K in Kind]: string } = {
  project: 'Project',
  party: 'Party',
  participant: 'Participant',
  assembly: 'Assembly',
  stage: 'Stage',
  link: 'Link',
  check: 'Check',
  signOff: 'SignOff',
  hold: 'Hold',
  concession: 'Concession',
  ask: 'Ask',
  handover: 'Handover',
  changeOrder: 'ChangeOrder',
  changeLine: 'ChangeLine',
  estimateLine: 'EstimateLine',
  decision: 'Decision',
  decisionOption: 'DecisionOption',
  part: 'Part',
  promise: 'PartPromise',
  openWindow: 'OpenWindow',
  slot: 'Slot',
  note: 'Note',
  told: 'Told',
  reading: 'Reading',
  airReading: 'AirReading',
  metalReading: 'MetalReading',
  step: 'Step',
  coat: 'Coat',
  film: 'Film',
  colour: 'Colour',
  tinter: 'Tinter',
  inDate: 'InDate',
  milestone: 'Milestone',
  shop: 'Shop',
  membership: 'Membership',
  bay: 'Bay',
}

/**
 * Columns that are ours and no field: at which version of the record the row last changed and was made (rows come back in
 * that order), the shop book's version for what is in two records, the record's own counter.
 */
export const KEPT_COLUMNS: readonly string[] = ['version', 'made', 'shopVersion', 'recordVersion']
