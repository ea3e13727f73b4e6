import { noticeOver } from '../gate/notice-over.ts'
import type { StartCondition } from '../record/condition.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { day, exactSpan, moment } from './dates.ts'
import { stateLabel } from './labels.ts'
import { figure } from './money.ts'
import { assemblyName, atStart, does, listed, partyName, personName, stageName } from './names.ts'
import type { Reader } from './reader.ts'
import { type Told, whoDoes } from './told.ts'
import { toldOfCoats } from './told-of-coats.ts'

const ordinals = ['no', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth']
const promises = (count: number): string => `${ordinals[count] ?? `promise no. ${count}`} promise`

/** Why a stage may not start, by rule of the gate. */
export function toldAtStart(
  condition: StartCondition,
  record: ProjectRecord,
  reader: Reader,
): Told {
  const { clearedBy } = condition
  switch (condition.rule) {
    case 'predecessor': {
      const stage = record.stages.rows.get(condition.stage)
      const owner = stage?.party ?? null
      const is = stateLabel(condition.is).toLowerCase()
      return {
        fact: `${stageName(condition.stage, record)} is ${condition.is === 'planned' ? 'not started' : is}`,
        detail: 'It must be signed off first.',
        who: `${atStart(partyName(owner, record, reader))} ${does(owner, reader, 'sign', 'signs')} it off.`,
      }
    }
    case 'countersign':
      return {
        fact: `${stageName(condition.stage, record)} has no countersign from ${partyName(condition.party, record, reader)}`,
        detail: 'It is signed off; a second signature was asked for.',
        who: whoDoes([condition.party], record, reader, 'countersign', 'countersigns'),
      }
    case 'least-lag':
      return {
        fact: `${stageName(condition.stage, record)} is still curing`,
        ...cureWords(condition, reader),
      }
    case 'greatest-lag':
      return {
        fact: `The recoat window after ${stageName(condition.stage, record)} has run out`,
        detail: 'Key the surface again first, as the maker’s data sheet says.',
        since: `Ran out ${moment(condition.ranOutAt, reader)}`,
      }
    case 'custody': {
      const { custodian } = condition
      const name = assemblyName(condition.entity, record)
      const released =
        condition.handover !== null &&
        record.handovers.rows.get(condition.handover)?.state === 'released'
      const theirs =
        custodian === reader.view.party ? 'your' : `${possessive(partyName(custodian, record))}`
      return {
        fact: `${name} is in ${theirs} custody`,
        detail: 'A party must answer for an assembly before it works on it.',
        who: released
          ? `It is released to ${receiver(condition, record, reader)}; ${receiver(condition, record, reader)} ${receives(condition, record, reader)} it.`
          : `${atStart(partyName(custodian, record, reader))} ${does(custodian, reader, 'release', 'releases')} it; ${receiver(condition, record, reader)} ${receives(condition, record, reader)} it.`,
      }
    }
    case 'exclusive-use': {
      const owner = record.stages.rows.get(condition.stage)?.party ?? null
      return {
        fact: `${assemblyName(condition.entity, record)} is in use by ${stageName(condition.stage, record)}`,
        detail: 'One stage at a time may work on it.',
        who: `${atStart(partyName(owner, record, reader))} ${does(owner, reader, 'end', 'ends')} that work.`,
      }
    }
    case 'must-be-fitted':
      return {
        fact: `${assemblyName(condition.assembly, record)} is not fitted`,
        detail: 'It must be on the car first.',
      }
    case 'must-be-off':
      return {
        fact: `${assemblyName(condition.assembly, record)} is fitted`,
        detail: 'It must be off the car first.',
      }
    case 'part': {
      const part = record.parts.rows.get(condition.part)
      const name = part?.name ?? 'A part'
      const promised =
        condition.promised === null
          ? 'No day is promised.'
          : `Promised ${day(condition.promised, reader)}, ${promises(condition.promises)}.`
      const where: { readonly [state: string]: string } = {
        wanted: `${name}: not ordered`,
        ordered: `${name}: not here`,
        arrived: `${name}: not inspected`,
        rejected: `${name}: rejected on inspection`,
      }
      return {
        fact: where[condition.is] ?? `${name}: ${condition.is}`,
        detail: condition.is === 'ordered' ? `Ordered. ${promised}` : '',
        who: whoDoes(
          clearedBy,
          record,
          reader,
          'see to it that it arrives and pass it on inspection',
          'clears it when it arrives and passes inspection',
        ),
      }
    }
    case 'change-order': {
      const order = record.changeOrders.rows.get(condition.entity)
      const yes: { readonly [state: string]: string } = {
        draft: `Change order ${condition.number} is not sent`,
        sent: `Change order ${condition.number} has no yes`,
        declined: `Change order ${condition.number} was declined`,
        withdrawn: `Change order ${condition.number} was withdrawn`,
      }
      return {
        fact: yes[condition.is] ?? `Change order ${condition.number} is ${condition.is}`,
        detail:
          order === undefined
            ? ''
            : `${order.title}, from ${partyName(order.party, record, reader)}.`,
        who:
          condition.is === 'draft'
            ? whoDoes(clearedBy, record, reader, 'send it', 'sends it')
            : whoDoes(clearedBy, record, reader, 'answer it', 'answers it'),
      }
    }
    case 'decision': {
      const decision = record.decisions.rows.get(condition.entity)
      return {
        fact:
          decision === undefined ? 'A decision is not made' : `Not decided: ${decision.question}`,
        detail: decision?.decideBy == null ? '' : `Wanted by ${day(decision.decideBy, reader)}.`,
        who: whoDoes(clearedBy, record, reader, 'choose', 'chooses'),
      }
    }
    case 'hold': {
      const hold = record.holds.rows.get(condition.entity)
      const person = hold?.person == null ? '' : `, ${personName(hold.person, reader.people)},`
      const releases = whoDoes(clearedBy, record, reader, 'release it', 'releases it')
      const who = person === '' ? releases : releases.replace(' release', `${person} release`)
      if (condition.point === 'witness') {
        const invited = condition.is === 'invited'
        const until = hold === undefined ? null : noticeOver(hold, reader.timeZone)
        return {
          fact: `Witness point: ${hold?.name ?? 'a point'}`,
          detail: !invited
            ? 'Nobody is invited yet.'
            : until === null
              ? 'Invited; not yet seen and not waived.'
              : `Invited. Without an answer the work goes on from ${moment(until, reader)}.`,
          who: invited
            ? whoDoes(clearedBy, record, reader, 'see it or waive it', 'sees it or waives it')
            : `${whoDoes(clearedBy, record, reader, 'invite', 'invites').slice(0, -1)} ${partyName(hold?.party ?? null, record, reader)}.`,
        }
      }
      return {
        fact: `Hold: ${hold?.name ?? 'a hold point'}`,
        detail: `Nobody passes ${stageName(condition.stage, record)} before it is released.`,
        who,
      }
    }
    case 'precautions':
      return {
        fact: 'Its precautions are not ticked',
        detail: `Against ${listed(condition.hazards, reader.locale)}.`,
        who: whoDoes(clearedBy, record, reader, 'see to them and tick', 'sees to them and ticks'),
      }
    case 'air': {
      const margin =
        condition.margin === null
          ? ''
          : ` The surface stands ${figure(condition.margin, reader.locale, 1)} °C above the dew point.`
      const facts = {
        missing: 'Air and surface have not been read',
        stale: 'The reading of air and surface is too old',
        'too damp': 'The air is too damp to spray',
        'too cold': 'The surface is too cold to spray',
        'too warm': 'The surface is too warm to spray',
        'near dew point': 'The surface is too near the dew point',
      }
      return {
        fact: facts[condition.is],
        detail: `Read at the panel, just before.${margin}`,
        who: whoDoes(clearedBy, record, reader, 'read them', 'reads them'),
      }
    }
    case 'in-date': {
      const things = condition.things.map(({ thing, until }) =>
        until === null ? `${thing}: never entered` : `${thing}: until ${day(until, reader)}`,
      )
      return {
        fact: 'Something it asks for is not in date',
        detail: `${atStart(listed(things, reader.locale))}.`,
        who: whoDoes(clearedBy, record, reader, 'enter it', 'enters it'),
      }
    }
    case 'milestone': {
      const one = record.milestones.rows.get(condition.entity)
      return {
        fact: one === undefined ? 'An agreed payment has not come' : `Not paid yet: ${one.name}`,
        detail: 'It was agreed to come before this stage.',
        who: `${atStart(partyName(one?.party ?? null, record, reader))} ${does(one?.party ?? null, reader, 'say', 'says')} when it has come.`,
      }
    }
    case 'coat-over':
    case 'sanded-through':
    case 'bare-metal':
    case 'lacquer-cure':
    case 'film-left':
      return toldOfCoats(condition, record, reader)
    case 'slot': {
      const spanned =
        condition.from === null || condition.to === null
          ? ''
          : exactSpan(condition.from, condition.to, reader)
      const told = {
        none: { fact: 'No bay is claimed for it', detail: 'This work needs a bay.' },
        asked: { fact: 'The slot is asked, not agreed', detail: spanned },
        outside: { fact: 'The agreed slot is at another time', detail: spanned },
        'bay taken': { fact: 'The bay is taken by other work', detail: spanned },
      }[condition.is]
      return {
        ...told,
        who:
          condition.is === 'asked'
            ? whoDoes(clearedBy, record, reader, 'agree to it', 'agrees to it')
            : whoDoes(clearedBy, record, reader, 'claim a slot', 'claims a slot'),
      }
    }
  }
}

type Cure = Extract<StartCondition, { readonly rule: 'least-lag' }>

function cureWords({ until, metal }: Cure, reader: Reader): Omit<Told, 'fact'> {
  if (until === null) {
    return {
      detail: `The metal is at ${figure(metal ?? 0, reader.locale, 1)} °C: under 10 °C it does not cure. Warm it, then read the metal again.`,
      since: 'No end in sight',
    }
  }
  return {
    detail:
      metal === null
        ? 'Counted by the clock from the recorded end of its work.'
        : `Counted from the recorded end of its work, longer where the metal was cold; it is at ${figure(metal, reader.locale, 1)} °C. An estimate: the data sheet outranks it.`,
    since: `Runs until ${moment(until, reader)}`,
    who: 'The clock clears it.',
  }
}

const possessive = (name: string): string => (name.endsWith('s') ? `${name}’` : `${name}’s`)

type Custody = Extract<StartCondition, { readonly rule: 'custody' }>

/** The party that will have custody: the one the release would go to. */
function taker(condition: Custody, record: ProjectRecord): string | null {
  const handover =
    condition.handover === null ? undefined : record.handovers.rows.get(condition.handover)
  if (handover !== undefined) return handover.to
  const to = condition.clearedWith?.input.to
  return typeof to === 'string' ? to : null
}
const receiver = (condition: Custody, record: ProjectRecord, reader: Reader): string => {
  const to = taker(condition, record)
  return to === null ? 'the next party' : partyName(to, record, reader)
}
const receives = (condition: Custody, record: ProjectRecord, reader: Reader): string =>
  does(taker(condition, record), reader, 'receive', 'receives')
