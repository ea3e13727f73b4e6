import { describe, expect, it } from 'vitest'
import { type Versions, versionsAfter } from './versions.ts'

describe('the versions of a record', () => {
  it('are those of one map with every step put in, whatever the steps', () => {
    const plain = new Map<string, number>()
    let versions: Versions = new Map()
    const kept: { readonly was: Versions; readonly should: ReadonlyMap<string, number> }[] = []
    for (let version = 1; version <= 200; version++) {
      const entities = [(version * 7) % 90, (version * 13) % 50].map((n) => ({ id: `stg_${n}` }))
      versions = versionsAfter(versions, { version, entities })
      for (const { id } of entities) plain.set(id, version)
      kept.push({ was: versions, should: new Map(plain) })
    }
    // Those of an earlier step stay as they were.
    for (const { was, should } of kept) {
      expect(new Map(was)).toEqual(should)
      expect(was.size).toBe(should.size)
      expect(new Set(was.keys())).toEqual(new Set(should.keys()))
      for (let n = 0; n < 90; n++) {
        expect(was.get(`stg_${n}`)).toBe(should.get(`stg_${n}`))
        expect(was.has(`stg_${n}`)).toBe(should.has(`stg_${n}`))
      }
    }
  })
})
