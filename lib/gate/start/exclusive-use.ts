import { stagesInWorkOn, worksOn } from '../indexes.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/**
 * Gate rule 3: no other stage in work shares an assembly with this one where either asks for exclusive use. Never conceded.
 * A paused stage lets others at the assembly; it passes the gate again when it goes on.
 */
export const exclusiveUse: GateRule = (record, stage) =>
  worksOn(stage).map((assembly) => {
    const other = stagesInWorkOn(record.stages, assembly).find(
      (busy) => busy.id !== stage.id && (busy.exclusive || stage.exclusive),
    )
    if (other === undefined) return met('exclusive-use', assembly)
    return unmet({
      rule: 'exclusive-use',
      entity: assembly,
      root: other.id,
      since: other.startedAt,
      concedable: false,
      clearedBy: [other.party],
      clearedWith: { command: 'stage.end', input: { stage: other.id } },
      stage: other.id,
    })
  })
