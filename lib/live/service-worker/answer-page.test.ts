import { describe, expect, it } from 'vitest'
import { answerPage, answerScreenData, type PageSources } from './answer-page.ts'
import { listsKept, recordOfPath } from './record-of-path.ts'

const never = () => new Promise<never>(() => {})
const page = (text: string, status = 200) => Promise.resolve(new Response(text, { status }))

/** A phone that keeps the project, with a shell, on a network that answers in time. */
const aPhone = (over: Partial<PageSources> = {}): PageSources => ({
  network: () => page('live'),
  shell: () => page('shell'),
  kept: async () => true,
  patience: never,
  late: () => {},
  ...over,
})
const said = async (answer: Promise<Response>): Promise<string> => (await answer).text()

describe('the answer to the address of a page', () => {
  it('is the network’s where that answers', async () => {
    expect(await said(answerPage(aPhone()))).toBe('live')
    expect(await said(answerPage(aPhone({ network: () => page('not here', 404) })))).toBe(
      'not here',
    )
  })

  it('is the shell where there is no network', async () => {
    const network = () => Promise.reject(new TypeError('no network'))
    expect(await said(answerPage(aPhone({ network })))).toBe('shell')
    expect(await said(answerPage(aPhone({ network, kept: async () => false })))).toBe('shell')
  })

  it('is the shell where nobody is home behind the proxy, or the server only starts', async () => {
    for (const status of [502, 503, 504]) {
      expect(await said(answerPage(aPhone({ network: () => page('', status) })))).toBe('shell')
    }
    const without = aPhone({ network: () => page('starting', 503), shell: async () => undefined })
    expect(await said(answerPage(without))).toBe('starting')
  })

  it('is the shell where the network hangs and the phone keeps the project', async () => {
    let late = 0
    const hangs = aPhone({ network: never, patience: async () => {}, late: () => late++ })
    expect(await said(answerPage(hangs))).toBe('shell')
    expect(late).toBe(1)
  })

  it('is waited for where the phone keeps nothing of it', async () => {
    const slow = aPhone({
      network: async () => {
        await new Promise((resolve) => setTimeout(resolve, 20))
        return new Response('late but live')
      },
      patience: async () => {},
      kept: async () => false,
    })
    expect(await said(answerPage(slow))).toBe('late but live')
  })

  it('is an error where there is neither a network nor a shell', async () => {
    const lost = aPhone({
      network: () => Promise.reject(new Error()),
      shell: async () => undefined,
    })
    expect((await answerPage(lost)).type).toBe('error')
  })
})

describe('the answer to a screen’s data', () => {
  it('is none where the network hangs or fails, so that Next asks for the page', async () => {
    expect(
      (await answerScreenData(aPhone({ network: never, patience: async () => {} }))).type,
    ).toBe('error')
    expect(
      (await answerScreenData(aPhone({ network: () => Promise.reject(new Error()) }))).type,
    ).toBe('error')
    expect(await said(answerScreenData(aPhone()))).toBe('live')
  })
})

describe('what an address is about', () => {
  it('is the project or the shop that it names, else nothing', () => {
    expect(recordOfPath('/p/prj_1/stages/stg_2')).toBe('prj_1')
    expect(recordOfPath('/shops/shp_1')).toBe('shp_1')
    expect(recordOfPath('/account')).toBeUndefined()
    expect(recordOfPath('/projects/new')).toBeUndefined()
  })
  it('is whatever the phone keeps where an installed program opens', () => {
    expect(['/', '/day-sheet', '/account', '/p/prj_1'].filter(listsKept)).toEqual([
      '/',
      '/day-sheet',
    ])
  })
})
