import type { OnUs } from '../gate/on-us.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { assemblyName, atStart, entityName, listed, partyName, stageName } from './names.ts'
import type { Reader } from './reader.ts'
import { ruleName } from './rule-name.ts'

/** What somebody waits for from this reader's party: `Tarn Lane Coachworks waits for the engine`. */
export function onUsFact(line: OnUs, record: ProjectRecord, reader: Reader): string {
  const who = line.for === null ? 'The project' : atStart(partyName(line.for, record, reader))
  const waits = line.for === reader.view.party ? 'wait' : 'waits'
  const stage = line.stage === null ? '' : stageName(line.stage, record)
  const handover = record.handovers.rows.get(line.entity)
  const moved = listed(
    (handover?.assemblies ?? []).map((id) => assemblyName(id, record)),
    reader.locale,
  )
  switch (line.kind) {
    case 'ask': {
      const ask = record.asks.rows.get(line.entity)
      const what = ask === undefined ? '' : entityName(ask.entity, record)
      const rule = ask === undefined ? 'something' : ruleName(ask.rule)
      return `${who} asked about ${rule}: ${what}`
    }
    case 'hold':
      return `${who} ${waits} for you at ${entityName(line.entity, record)}, ${stage}`
    case 'countersign':
      return `${who} ${waits} for your countersign on ${stage}`
    case 'confirm':
      return `${stage} is in doubt: confirm it or reopen it`
    case 'release':
      return `${who} ${waits} for ${moved}: release it`
    case 'receive':
      return `${moved} is released to you by ${partyName(line.for, record)}: receive it`
    case 'send change order':
      return `${atStart(entityName(line.entity, record))} is drafted, not sent`
    case 'answer change order':
      return `${who} ${waits} for your answer to ${entityName(line.entity, record)}`
    case 'choose':
      return `${who} ${waits} for your choice: ${entityName(line.entity, record)}`
    case 'inspect':
      return `${entityName(line.entity, record)} has arrived: inspect it`
    case 'agree slot':
      return `${who} ${waits} for your word on a ${entityName(line.entity, record)}`
  }
}
