import { describe, expect, it } from 'vitest'
import { readEnv } from './env.ts'

describe('the settings', () => {
  it('serve this machine on port 3000 with the embedded database when nothing is set', () => {
    expect(readEnv({ PORT: '', HOST: '' })).toMatchObject({
      port: 3000,
      host: '127.0.0.1',
      loopback: true,
      databaseUrl: undefined,
      publicUrl: undefined,
      demoDoors: false,
      partsPage: false,
    })
  })

  it.each([
    ['PORT', 'three thousand'],
    ['PORT', '65536'],
    ['HOST', 'my host'],
    ['DATABASE_URL', 'mysql://localhost/yard'],
    ['PUBLIC_URL', 'yard.example'],
    ['PUBLIC_URL', 'https://yard.example/path'],
    ['SMTP_URL', 'https://mail.example'],
    ['AUTH_SECRET', 'short'],
    ['DEMO_DOORS', 'perhaps'],
    ['PARTS_PAGE', 'perhaps'],
  ])('name %s when it is "%s"', (name, text) => {
    expect(() => readEnv({ [name]: text })).toThrow(new RegExp(`^${name} `))
  })

  it('name every fault at once', () => {
    expect(() => readEnv({ PORT: 'x', DEMO_DOORS: 'x' })).toThrow(/PORT .*\n.*DEMO_DOORS /)
  })

  it('show the parts of the look in development, else only where they are asked for', () => {
    expect(readEnv({ NODE_ENV: 'development' })).toMatchObject({ partsPage: true })
    expect(readEnv({ NODE_ENV: 'production' })).toMatchObject({ partsPage: false })
    expect(readEnv({ PARTS_PAGE: 'yes' })).toMatchObject({ partsPage: true })
  })

  it('never show a password', () => {
    expect(() => readEnv({ DATABASE_URL: 'mysql://a:hunter2@b/c' })).not.toThrow(/hunter2/)
    expect(() => readEnv({ DATABASE_URL: 'mysql://a:hunter2@b/c' })).toThrow(/^DATABASE_URL /)
  })

  it('ask for an https PUBLIC_URL beyond this machine', () => {
    expect(() => readEnv({ HOST: '0.0.0.0' })).toThrow(/^PUBLIC_URL is missing/)
    expect(() => readEnv({ HOST: '0.0.0.0', PUBLIC_URL: 'http://yard.example' })).toThrow(/https/)
    expect(readEnv({ HOST: '0.0.0.0', PUBLIC_URL: 'https://yard.example/' })).toMatchObject({
      publicUrl: 'https://yard.example',
      loopback: false,
    })
  })
})
