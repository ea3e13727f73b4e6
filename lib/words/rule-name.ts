const names: { readonly [rule: string]: string } = {
  predecessor: 'what comes before it',
  countersign: 'the countersign',
  'least-lag': 'the cure time',
  'greatest-lag': 'the recoat window',
  'coat-over': 'what may lie over what',
  'sanded-through': 'a place sanded through',
  'bare-metal': 'bare metal coated in the same shift',
  'lacquer-cure': 'the cure of the lacquer',
  'film-left': 'the film that is left',
  custody: 'custody',
  'exclusive-use': 'use by one stage at a time',
  'must-be-fitted': 'what must be fitted',
  'must-be-off': 'what must be off',
  part: 'a part',
  'change-order': 'the yes to a change order',
  decision: 'a decision',
  hold: 'a hold or witness point',
  slot: 'the slot',
  precautions: 'its precautions',
  air: 'air and surface',
  'in-date': 'what must be in date',
  milestone: 'an agreed payment',
  check: 'a check',
}

/** A rule of the gate by what it asks for, in few words. */
export const ruleName = (rule: string): string => names[rule] ?? rule
