import { execFile } from 'node:child_process'
import { expect, test } from 'vitest'

const run = (...args: string[]): Promise<{ code: number; answer: unknown }> =>
  new Promise((resolve) => {
    execFile(process.execPath, ['lib/bin/sums.ts', ...args], (error, stdout) => {
      resolve({ code: Number(error?.code ?? 0), answer: JSON.parse(stdout) })
    })
  })

test('a script gets a sum as JSON, and the list with fields and units', async () => {
  const { code, answer } = await run('dew-point', '{"air":20,"humidity":60,"surface":15.2}')
  expect(code).toBe(0)
  expect(answer).toMatchObject({
    outcome: 'result',
    verdict: { passes: true },
    figures: expect.arrayContaining([
      expect.objectContaining({ name: 'dew point', shown: '12.0' }),
    ]),
    input: { air: 20, humidity: 60, surface: 15.2 },
    source: expect.stringContaining('Magnus'),
  })
  const { answer: list } = await run('--list')
  expect(list).toContainEqual(expect.objectContaining({ name: 'mix-correction', group: 'paint' }))
})

test('what can’t be worked says so by its field and its code, also what is no JSON and no sum', async () => {
  const { code, answer } = await run('dew-point', '{"air":20}')
  expect(code).toBe(1)
  expect(answer).toMatchObject({ outcome: 'refused', faults: [{ field: 'humidity' }] })
  expect((await run('dew-point', 'air 20')).code).toBe(2)
  expect((await run('no-such-sum')).code).toBe(2)
})
