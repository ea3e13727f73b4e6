import { describe, expect, it } from 'vitest'
import { anId, aRecord } from '../../test/builders.ts'
import { furtherParties, samples, views } from '../../test/see-samples.ts'
import { columns, fields, whoSees } from '../../test/see-table.ts'
import { entitySchemas } from '../record/entity.ts'
import { isSeen, see } from './see.ts'

const record = aRecord(furtherParties, Object.values(samples).filter(inProject))

function inProject({ kind }: { readonly kind: string }): boolean {
  return !['project', 'shop', 'membership', 'bay'].includes(kind)
}
const words = (text: string): string[] => text.split(/[ |]+/)

describe('see', () => {
  it('has a sample of every kind, and a row for every sample', () => {
    const kinds = new Set(Object.values(samples).map(({ kind }) => kind))
    expect([...kinds].sort()).toEqual(Object.keys(entitySchemas).sort())
    expect(Object.keys(whoSees)).toEqual(Object.keys(samples))
  })

  it.each(Object.entries(samples))('knows every field of: %s', (_, entity) => {
    expect(Object.keys(entity).sort()).toEqual(words(fields[entity.kind]).sort())
  })

  describe.each(Object.entries(samples))('%s', (name, entity) => {
    const row = whoSees[name]?.split(' ') ?? []
    it.each(columns.map((column, i) => [column, row[i]]))('as %s: %s', (column, expected) => {
      const seen = see(views[column], record, entity)
      if (expected === '.') return expect(seen).toBeNull()
      if (expected === 'stub') {
        return expect(seen).toEqual({ kind: entity.kind, id: entity.id, hidden: true })
      }
      const narrower = words(fields[entity.kind].split('|')[1]?.trim() ?? '').filter(Boolean)
      const nulled = expected === 'open' ? narrower : []
      expect(expected === 'all' || narrower.length > 0).toBe(true)
      expect(isSeen(seen)).toBe(true)
      expect(seen).toEqual({ ...entity, ...Object.fromEntries(nulled.map((f) => [f, null])) })
    })
  })

  it('shows nothing to a party that is not of this project', () => {
    const stranger = { party: anId('pty', 'stranger'), role: 'manager' } as const
    for (const entity of Object.values(samples)) {
      expect(see(stranger, record, entity)).toBeNull()
    }
  })
})
