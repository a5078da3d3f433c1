import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { RefusedError } from '@/lib/core/errors'
import { errorForLog } from '@/lib/data/error-for-log'
import { log } from '@/lib/data/log'
import { errorResponse, refusalOf } from '@/lib/web/error-to-response'
import { logWhatIsPrinted } from '@/lib/web/one-line'
import { newRequestId, pathForLog } from '@/lib/web/request-id'
import { testDatabase } from '@/tests/setup/database'
import { monday, openShop, owner } from './jobs/counter-shop'

const lines: string[] = []
beforeEach(() => {
  lines.length = 0
  for (const level of ['info', 'warn', 'error'] as const) {
    vi.spyOn(log, level).mockImplementation(((...said: unknown[]) => {
      lines.push(JSON.stringify(said))
    }) as never)
  }
})

const secret = 'zq-secret-of-somebody'
/** What a use case may be given: every name that a secret has anywhere, and a list and a thing of such. */
const given = Object.fromEntries(
  [
    'password',
    'pin',
    'again',
    'code',
    'token',
    'name',
    'signIn',
    'user',
    'email',
    'phone',
    'text',
    'note',
    'reason',
    'id',
  ].map((key) => [key, secret]),
)
const asked = {
  ...given,
  roles: [secret],
  grants: [secret],
  heads: [given],
  customer: given,
  version: 1,
  jobId: secret,
}

type Deed = (...given: readonly unknown[]) => Promise<unknown>
const root = join(import.meta.dirname, '..', '..', 'lib', 'use-cases')
let deeds: readonly Deed[] = []

beforeAll(async () => {
  await openShop(await testDatabase())
  const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'))
  const modules = await Promise.all(files.map((file) => import(join(root, file)) as Promise<Record<string, unknown>>))
  deeds = modules.flatMap((one) => Object.values(one).filter((value) => typeof value === 'function')) as Deed[]
}, 120_000)

describe('the log', () => {
  it('holds nothing of what any use case was given, whatever went wrong in it', async () => {
    expect(deeds.length).toBeGreaterThan(200)
    for (const deed of deeds) {
      for (const input of [asked, secret]) {
        await Promise.resolve()
          .then(() => deed(owner, input, { now: monday }))
          .catch((error: unknown) => refusalOf(error))
      }
    }
    // Many of them end in the database's client, which repeats what it was given.
    expect(lines.length).toBeGreaterThan(50)
    expect(lines.filter((line) => line.includes(secret))).toEqual([])
  })

  it('of an error keeps what it is called, one line and the places, and of the database’s no value', () => {
    const mine = Object.assign(new Error(`first\n{ passwordHash: "${secret}" }`), {
      name: 'PrismaClientValidationError',
    })
    expect(JSON.stringify(errorForLog(mine))).not.toContain(secret)
    expect(errorForLog(mine).stack).toMatch(/^\s+at /)
    const known = Object.assign(new Error(`create({ pin: "${secret}" })\nUnique constraint failed`), {
      name: 'PrismaClientKnownRequestError',
    })
    expect(errorForLog(known).message).toBe('Unique constraint failed')
    expect(errorForLog(new Error('plain\nand more')).message).toBe('plain')
    expect(errorForLog('thrown text')).toEqual({ name: 'string', message: '', stack: '' })
  })

  it('and the answer have the same number to call for help with; a refusal needs none', async () => {
    const answer = (await errorResponse(new Error('inside')).json()) as { refusal: { message: string } }
    const help = /give this reference number: ([A-Z0-9]{4}-[A-Z0-9]{4})\.$/.exec(answer.refusal.message)?.[1] ?? 'none'
    expect(lines).toHaveLength(1)
    expect(lines[0]).toContain(`"help":"${help}"`)
    expect(answer.refusal.message).not.toContain('inside')
    refusalOf(new RefusedError({ code: 'invalid', message: 'Enter the reason.' }))
    expect(lines).toHaveLength(1)
  })

  it('takes what the framework prints: what was sent broken on one line, without a stack', () => {
    const printed = console.error
    try {
      logWhatIsPrinted()
      console.error(new Error('Failed to find Server Action "7f". This request might be older.\nRead more'))
      console.error('⨯', Object.assign(new Error('broken inside'), { digest: '42' }))
    } finally {
      console.error = printed
    }
    expect(lines[0]).toContain('broken request')
    expect(lines[0]).not.toMatch(/ at |stack|7f/)
    expect(lines[1]).toMatch(/"digest":"42".*broken inside/)
    expect(lines.every((line) => !line.includes('\n'))).toBe(true)
  })
})

it('a path in the log is without the token of a link and without what was asked', () => {
  expect(pathForLog(`/s/${secret}/spec/1?x=${secret}`)).toBe('/s/…/spec/1')
  expect(pathForLog(`/reset/${secret}`)).toBe('/reset/…')
  expect(pathForLog(`/find?q=${secret}`)).toBe('/find')
  expect(new Set(Array.from({ length: 200 }, newRequestId)).size).toBe(200)
})
