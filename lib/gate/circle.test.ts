import { describe, expect, it } from 'vitest'
import { anId } from '../../test/builders.ts'
import { circleThrough } from './circle.ts'

const stage = (name: string) => anId('stg', name)
const link = (from: string, to: string) => ({ from: stage(from), to: stage(to) })

describe('a new link between stages', () => {
  it('closes no circle where nothing leads back', () => {
    expect(circleThrough([link('prime', 'paint')], stage('paint'), stage('wings'))).toBeNull()
    expect(
      circleThrough([link('a', 'b'), link('a', 'c'), link('c', 'd')], stage('b'), stage('d')),
    ).toBeNull()
  })

  it('names the whole circle, from the link that would close it', () => {
    const links = [link('prime', 'paint'), link('paint', 'wings')]
    expect(circleThrough(links, stage('wings'), stage('prime'))).toEqual([
      stage('wings'),
      stage('prime'),
      stage('paint'),
    ])
  })

  it('names two stages that would wait for each other', () => {
    expect(circleThrough([link('a', 'b')], stage('b'), stage('a'))).toEqual([
      stage('b'),
      stage('a'),
    ])
  })

  it('never lets a stage wait for itself', () => {
    expect(circleThrough([], stage('a'), stage('a'))).toEqual([stage('a')])
  })

  it('names the shortest of several circles', () => {
    const links = [link('a', 'b'), link('b', 'c'), link('c', 'd'), link('a', 'd')]
    expect(circleThrough(links, stage('d'), stage('a'))).toEqual([stage('d'), stage('a')])
  })

  it('finds the circle at the end of a chain of five thousand', () => {
    const links = Array.from({ length: 5000 }, (_, n) => link(`${n}`, `${n + 1}`))
    expect(circleThrough(links, stage('5000'), stage('0'))).toHaveLength(5001)
  })
})
