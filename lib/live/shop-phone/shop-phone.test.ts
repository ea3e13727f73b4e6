import { beforeEach, describe, expect, it } from 'vitest'
import { DeviceId, NOBODY, PersonId, ShopId } from '../../record/ids.ts'
import {
  IDLE_MS,
  learnShopPhone,
  pressing,
  readerOn,
  shopPhone,
  takeOver,
  tireShopPhone,
  touchShopPhone,
} from './shop-phone.ts'

const sil = PersonId.parse('psn_sil')
const tobin = PersonId.parse('psn_tobin')
const here = (...hands: PersonId[]) => ({
  id: DeviceId.parse('dev_bay'),
  name: 'Paint bay phone',
  shop: ShopId.parse('shp_tarn'),
  shopName: 'Tarn Lane',
  demo: false,
  hands: hands.map((person) => ({ person, name: person.slice(4), hasCode: true })),
})
const HOUR_MS = 3_600_000

describe('a phone that hands share', () => {
  beforeEach(() => {
    learnShopPhone(null)
    learnShopPhone(here(sil, tobin))
  })

  it('is read by whoever works at it, and by nobody while nobody has said so', () => {
    expect(readerOn(shopPhone(), NOBODY)).toBe(NOBODY)
    takeOver(sil)
    expect(readerOn(shopPhone(), NOBODY)).toBe(sil)
    takeOver(tobin)
    expect(readerOn(shopPhone(), NOBODY)).toBe(tobin)
    expect(readerOn(shopPhone(), sil)).toBe(sil)
  })

  it('forgets who worked at it once nobody has touched it for a while', () => {
    takeOver(sil, HOUR_MS)
    touchShopPhone(HOUR_MS + IDLE_MS - 1)
    tireShopPhone(HOUR_MS + 2 * IDLE_MS - 2)
    expect(shopPhone().hand).toBe(sil)
    tireShopPhone(HOUR_MS + 2 * IDLE_MS)
    expect(shopPhone().hand).toBeNull()
  })

  it('doesn’t take the next one’s first touch for a press of the one before', () => {
    takeOver(sil, HOUR_MS)
    touchShopPhone(HOUR_MS + IDLE_MS + 1)
    expect(shopPhone().hand).toBeNull()
  })

  it('forgets who left the shop', () => {
    takeOver(sil)
    learnShopPhone(here(tobin))
    expect(shopPhone().hand).toBeNull()
  })

  it('asks who presses, and for their code where it is a signature', async () => {
    const started = pressing('stage.start')
    const { asking } = shopPhone()
    expect(asking?.is).toBe('who')
    if (asking?.is === 'who') asking.answer(tobin)
    expect(await started).toMatchObject({ person: tobin, personName: 'tobin', code: null })
    const signed = pressing('stage.signOff')
    await Promise.resolve()
    const next = shopPhone().asking
    expect(next).toMatchObject({ is: 'code', person: tobin, wrong: null })
    if (next?.is === 'code') next.answer('4807')
    expect(await signed).toMatchObject({ person: tobin, code: '4807' })
    expect(shopPhone().asking).toBeNull()
  })

  it('presses nothing where they let it be', async () => {
    const started = pressing('note.write')
    shopPhone().asking?.answer(null)
    expect(await started).toBeNull()
  })

  it('presses nothing where it is the shop’s no longer by then', async () => {
    const started = pressing('note.write')
    learnShopPhone(null)
    expect(await started).toBeNull()
  })

  it('asks nothing where it is somebody’s own', async () => {
    learnShopPhone(null)
    expect(await pressing('stage.signOff')).toBe('own')
  })
})
