import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { openAside } from './aside.ts'

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

test('what a page is made of is found by its ticket alone, and each page has its own', () => {
  const aside = openAside<string>()
  const mara = aside.late('as Mara sees it', '/api/projects/prj')
  const ines = aside.late('as Ines sees it', '/api/projects/prj')
  expect(mara?.path).toBe('/api/projects/prj')
  expect(aside.of(mara?.ticket ?? '')).toBe('as Mara sees it')
  expect(aside.of(ines?.ticket ?? '')).toBe('as Ines sees it')
  expect(aside.of('guessed')).toBeUndefined()
})

test('it goes by itself once any page has been made', () => {
  const aside = openAside<string>()
  const late = aside.late('a record', '/api/projects/prj')
  vi.advanceTimersByTime(29_000)
  expect(aside.of(late?.ticket ?? '')).toBe('a record')
  vi.advanceTimersByTime(2_000)
  expect(aside.of(late?.ticket ?? '')).toBeUndefined()
})

test('where there is nothing to show, nothing lies aside', () => {
  expect(openAside<string>().late(null, '/api/projects/prj')).toBeNull()
})
