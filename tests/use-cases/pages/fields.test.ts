import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it, vi } from 'vitest'
import { fields, fieldTable, sees } from '@/lib/core/access/fields'
import type { Actor, Role } from '@/lib/core/access/roles'
import { makeCustomerLink } from '@/lib/use-cases/links/make-customer-link'
import type { TestDatabase } from '@/tests/setup/database'
import { demoMoment as now, filledDemo } from '@/tests/setup/demo-shop'
import { fillShop } from '@/tests/setup/filled-shop'
import { inLongRun } from '@/tests/setup/long-run'
import {
  amountInJson,
  fillGuarded,
  guardedColumns,
  markForLink,
  marks,
  markShop,
  openColumns,
  secretsOf,
  soundsGuarded,
} from './guarded-columns'
import { linkPage, listPages, thingPages, thingsOf, unlessRefused, type Things } from './pages'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 300_000 })

/**
 * The shop is read twice, once as it is and once with every guarded field changed. Who may not see a field gets the same
 * to the letter both times: then nothing that is worked out of it, no sum, no order of a list and no sentence, tells of
 * it either. Who may see it finds the change.
 */
type Seen = Readonly<Record<string, string>>

const actorOf = (role: Role): Actor => ({
  ...{ personId: '019caed9-4300-7000-8000-0000000000fe', name: 'Una Test', roles: [role], grants: [] },
})

/** Bytes by what they are; what JSON would leave out is put in. */
function plain(_key: string, value: unknown): unknown {
  if (value instanceof Map || value instanceof Set) return [...value]
  if (value instanceof Uint8Array) return createHash('sha256').update(value).digest('hex')
  return value
}
const asText = (seen: unknown): string => JSON.stringify(seen, plain) ?? 'nothing'

/** In a short run every fourth job with its heads, and each kind of step once; always everything that is not of a job. */
function some(things: Things): Things {
  if (inLongRun) return things
  const kept = <T>(list: readonly T[]): readonly T[] => list.filter((_, place) => place % 4 === 0)
  const kinds = new Set<string>()
  const visits = things.visits.map((visit) => ({
    ...visit,
    steps: visit.steps.filter(({ stepId }) => !kinds.has(stepId) && kinds.add(stepId)),
  }))
  const withStep = visits.filter(({ steps }) => steps.length > 0)
  return {
    ...things,
    jobs: kept(things.jobs),
    visits: withStep,
    pairs: kept(things.pairs),
    photos: kept(things.photos),
  }
}

async function seenBy(role: Role, things: Things, without: readonly string[] = []): Promise<Seen> {
  const actor = actorOf(role)
  const { person: _everybodysOwn, ...pages } = { ...listPages(actor, now), ...thingPages(actor, now, things, 'none') }
  const seen: Record<string, string> = {}
  for (const [name, look] of Object.entries(pages)) {
    if (name === 'customer link' || without.includes(name)) continue
    seen[name] = asText(await unlessRefused(look()))
  }
  return seen
}

/** Where two answers begin to differ: enough of it to find the field. */
function difference(before: string, after: string): string {
  if (before === after) return ''
  let at = 0
  while (before[at] === after[at]) at += 1
  return `${before.slice(Math.max(0, at - 60), at)}⟨${before.slice(at, at + 30)}⟩⟨${after.slice(at, at + 30)}⟩`
}

const differences = (before: Seen, after: Seen): readonly string[] =>
  Object.entries(before).flatMap(([name, text]) => {
    const where = difference(text, after[name] ?? '')
    return where === '' ? [] : [`${name}: ${where}`]
  })

/** Pages that cost the most and of which the machinist sees all that anybody does. */
const benchPages = inLongRun ? [] : ['step', 'head', 'flow', 'sending', 'booking the same again']

describe('at work', () => {
  const before: Partial<Record<Role, Seen>> = {}
  const after: Partial<Record<Role, Seen>> = {}
  let secrets: ReturnType<typeof secretsOf>

  beforeAll(async () => {
    vi.stubEnv('NEXTAUTH_SECRET', 'only for these tests, long enough')
    const { url } = await openMarked()
    before.machinist = await seenBy('machinist', things)
    if (inLongRun) before.counter = await seenBy('counter', things)
    secrets = secretsOf(url)
    markShop(url)
    after.machinist = await seenBy('machinist', things)
    after.counter = await seenBy('counter', things, benchPages)
    after.owner = await seenBy('owner', things, benchPages)
  })

  it('a machinist’s answers are the same whatever a guarded field holds', () => {
    expect(differences(before.machinist ?? {}, after.machinist ?? {})).toEqual([])
    expect(Object.values(before.machinist ?? {}).filter((seen) => seen.length > 200).length).toBeGreaterThan(20)
  })

  it.each(['machinist', 'counter', 'owner'] as const)('no answer to a %s holds a field that is not theirs', (role) => {
    const hidden = [...marks, ...secrets].filter(({ field }) => !sees(actorOf(role), field))
    expect(hidden.length).toBeGreaterThan(5)
    const found = Object.entries(after[role] ?? {}).flatMap(([page, seen]) =>
      hidden.filter(({ says }) => seen.includes(says)).map(({ column }) => `${page}: ${column}`),
    )
    expect(found).toEqual([])
    if (role === 'machinist') expect(Object.values(after.machinist ?? {}).join()).not.toContain(amountInJson)
  })

  it('each of them is there to be read by the owner', () => {
    const all = Object.values(after.owner ?? {}).join()
    const nowhere = marks.filter(({ says }) => !isIn(all, says)).map(({ column }) => column)
    expect(nowhere).toEqual(shownNowhere)
    expect(all).toContain(amountInJson)
    expect(new Set(secrets.map(({ column }) => column)).size).toBe(7)
  })
})

/** Kept, and on no page: sums are made anew of what they are sums of, and a number is shown as it was typed. */
const shownNowhere: readonly string[] = [
  ...['PriceLine.endReason', 'Finding.taxName', 'MoneyPaper.netMinor', 'MoneyPaper.taxMinor', 'HandOver.unpaidMinor'],
  ...['CustomerContact.otherPhoneE164', 'CustomerContact.otherPhoneDigits'],
]

/** An amount may stand in a form as it is typed: 700,100.07 as 700100.07. */
const isIn = (text: string, says: string): boolean =>
  text.includes(says) || text.includes(says.replace(/(\d\d)$/, '.$1'))

let things: Things
async function openMarked(): Promise<TestDatabase> {
  const database = await filledDemo()
  fillGuarded(database.url)
  const all = await thingsOf(database)
  fillShop(database.url, 0, 20, now)
  things = some(all)
  return database
}

describe('a customer’s link', () => {
  const seenWith = async (token: string) => ({ link: asText(await linkPage(now, things, token)) })

  /** A job that was priced and released, with its link. */
  async function linked({ client, url }: TestDatabase) {
    const { id } = await client.job.findFirstOrThrow({
      where: { visits: { some: { releases: { some: {} } } }, prices: { some: { endedAt: null } } },
    })
    const { path } = await makeCustomerLink(actorOf('owner'), { jobId: id }, { now })
    const withPrices = (pricesOnLink: boolean) => client.job.update({ where: { id }, data: { pricesOnLink } })
    return { url, id, token: path.replace('/s/', ''), withPrices }
  }

  it('tells the same whatever costs, prices, other customers and our own notes hold', async () => {
    const { url, id, token, withPrices } = await linked(await openMarked())
    await withPrices(false)
    const before = await seenWith(token)
    const secrets = secretsOf(url)
    // A finding's price is part of the question to the customer.
    const marked = marks.filter(({ column }) => !column.startsWith('Finding.'))
    markShop(url, marked)
    markForLink(url, id)
    const after = await seenWith(token)
    expect(differences(before, after)).toEqual([])
    expect(after.link.length).toBeGreaterThan(500)

    // With its prices shown it has them, and nothing else of what was changed.
    await withPrices(true)
    const { link } = await seenWith(token)
    const found = [...marked, ...secrets].filter(({ says }) => link.includes(says)).map(({ column }) => column)
    expect(found).toEqual(['PriceLine.unitMinor', 'PriceLine.reason'])
    expect(link).not.toMatch(/zq-(?!priceline)/)
  })
})

describe('the table of guarded columns', () => {
  it('knows every column of the model whose name says that it may be one', () => {
    const model = readFileSync('prisma/schema.prisma', 'utf8')
    const columns = [...model.matchAll(/^model (\w+) \{\n([\s\S]*?)^\}/gm)].flatMap(([, table = '', body = '']) =>
      [...body.matchAll(/^ {2}([a-z]\w*) +(?:String|Int|Boolean|Float)\b/gm)].map(
        ([, column = '']) => `${table}.${column}`,
      ),
    )
    const guarded = Object.entries(guardedColumns).flatMap(([table, of]) =>
      Object.keys(of).map((one) => `${table}.${one}`),
    )
    expect(columns.length).toBeGreaterThan(400)
    expect([...guarded, ...openColumns].filter((column) => !columns.includes(column))).toEqual([])
    const known = new Set([...guarded, ...openColumns])
    const named = columns.filter((column) => soundsGuarded.test(column.split('.')[1] ?? ''))
    expect(named.filter((column) => !known.has(column))).toEqual([])
  })

  it('has a column of each field, and each field a right', () => {
    const used = new Set(Object.values(guardedColumns).flatMap((columns) => Object.values(columns)))
    expect([...used].sort()).toEqual([...fields].sort())
    const machinist = actorOf('machinist')
    expect(fields.filter((field) => sees(machinist, field))).toEqual([])
    expect(fields.filter((field) => !sees(actorOf('owner'), field))).toEqual(['secret'])
    expect(fieldTable.secret).toBeNull()
  })
})
