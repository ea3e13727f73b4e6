import { describe, expect, it } from 'vitest'
import { codeFault } from './code-fault.ts'

describe('a hand’s own code', () => {
  it('has four to eight digits, and nothing else', () => {
    for (const code of ['', '123', '480', '480a', ' 4807', '480713926', '٤٨٠٧']) {
      expect(codeFault(code), code).toBe('digits')
    }
    for (const code of ['4807', '48071', '480713', '48071392']) expect(codeFault(code)).toBeNull()
  })

  it('is none of those that everybody tries first', () => {
    for (const code of ['0000', '7777', '11111111']) expect(codeFault(code), code).toBe('same')
    for (const code of ['1234', '0123', '7890', '4321', '98765', '2109']) {
      expect(codeFault(code), code).toBe('run')
    }
    for (const code of ['1212', '404040', '123123', '48074807']) {
      expect(codeFault(code), code).toBe('pattern')
    }
  })
})
