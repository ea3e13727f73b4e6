import { globSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { matchScreen } from './match-screen.ts'
import { screenTitles } from './screen-titles.ts'

const addressOf = (file: string): string => file.replace(/^app/, '').replace(/\/page\.tsx$/, '')

describe('the list of screens', () => {
  it('names every page of a project and a shop, of what is unsent, of a tag and of the bench sums, and no other', () => {
    const pages = [
      'app/p/**/page.tsx',
      'app/shops/**/page.tsx',
      'app/{scan,sums,t,unsent}/**/page.tsx',
    ].flatMap((glob) => globSync(glob))
    expect(pages.length).toBeGreaterThan(20)
    expect(pages.map(addressOf).toSorted()).toEqual(Object.keys(screenTitles).toSorted())
  })

  it('finds a screen by its address, with the ids in it', () => {
    expect(matchScreen('/p/prj_1')).toEqual({ path: '/p/[project]', params: { project: 'prj_1' } })
    expect(matchScreen('/shops/shp_1/diary/')?.path).toBe('/shops/[shop]/diary')
    expect(matchScreen('/p/prj_1/set-up/stages/stg_9')).toEqual({
      path: '/p/[project]/set-up/stages/[stage]',
      params: { project: 'prj_1', stage: 'stg_9' },
    })
  })

  it('takes “new” for a form, not for the id of an order', () => {
    expect(matchScreen('/p/prj_1/change-orders/new')?.path).toBe('/p/[project]/change-orders/new')
    expect(matchScreen('/p/prj_1/change-orders/cho_2')?.path).toBe(
      '/p/[project]/change-orders/[order]',
    )
  })

  it('finds nothing where there is no such page', () => {
    for (const none of ['/', '/p', '/p/prj_1/nowhere', '/shops/shp_1/diary/week', '/account'])
      expect(matchScreen(none), none).toBeNull()
  })
})
