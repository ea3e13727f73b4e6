import { describe, expect, it } from 'vitest'
import { nearest, type PlaceToGo, recentFirst } from './nearest.ts'

const place = (name: string, under = 'Averley Three-Litre'): PlaceToGo => ({
  path: `/p/prj_1/${name}`,
  name,
  under,
})
const places = [
  place('Handovers'),
  place('4 · Strip the engine', 'stage of Tarn Lane Coachworks'),
  place('41 · Engine ready to fit', 'stage of Bexwater Engines'),
  place('Engine', 'assembly, with Bexwater Engines'),
  place('Windscreen', 'part'),
]
const names = (typed: string) => nearest(places, typed).map(({ name }) => name)

describe('nearest', () => {
  it('finds a stage by its number before others that begin with it', () => {
    expect(names('4')).toEqual(['4 · Strip the engine', '41 · Engine ready to fit'])
    expect(names('41')[0]).toBe('41 · Engine ready to fit')
  })

  it('puts the thing itself before what only speaks of it', () => {
    expect(names('engine')[0]).toBe('Engine')
    expect(names('ready')).toEqual(['41 · Engine ready to fit'])
  })

  it('finds by what it is and whose, in several words', () => {
    expect(names('bexwater assembly')).toEqual(['Engine'])
    expect(names('nothing of that name')).toEqual([])
  })
})

describe('recentFirst', () => {
  it('has the latest visits on top, and leaves the rest as it stood', () => {
    const sorted = recentFirst(places, ['/p/prj_1/Windscreen', '/p/prj_1/Handovers'])
    expect(sorted.map(({ name }) => name)).toEqual([
      'Windscreen',
      'Handovers',
      '4 · Strip the engine',
      '41 · Engine ready to fit',
      'Engine',
    ])
  })
})
