import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { makeCustomerLink } from '@/lib/use-cases/links/make-customer-link'
import { seeHead } from '@/lib/use-cases/heads/see-head'
import { seeStation } from '@/lib/use-cases/stations/see-station'
import type { TestDatabase } from '@/tests/setup/database'
import { demoMoment as now, filledDemo } from '@/tests/setup/demo-shop'
import { fillLists } from '@/tests/setup/filled-lists'
import { fillShop } from '@/tests/setup/filled-shop'
import { plainSqlite } from '@/tests/setup/plain-sqlite'
import { queriesOfMoreThan } from '@/tests/setup/rows-read'
import { scansOf } from '@/tests/setup/scans'
import { selectsOf, statementsOf } from '@/tests/setup/statements'
import { listPages, thingPages, thingsOf, type Pages } from './pages'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 300_000 })

const owner: Actor = {
  personId: '019caed9-4300-7000-8000-0000000000fe',
  name: 'Una Test',
  roles: ['owner'],
  grants: [],
}
const lists = listPages(owner, now)
const names = Object.keys(lists) as (keyof typeof lists)[]
const atMost: Partial<Record<keyof typeof lists, number>> = {
  queue: 8,
  stations: 8,
  counter: 8,
  away: 8,
  'back room': 8,
}
const thingNames = Object.keys(thingPages(owner, now, {} as never, '')) as (keyof ReturnType<typeof thingPages>)[]

/** A search by name compares a thousand names of each of five lists: nothing reads more, however long the lists are. */
const mostRows = 5050

let database: TestDatabase
let things: Pages
const later = ', page 2'
const few = new Map<string, number>()

beforeAll(async () => {
  process.env.NEXTAUTH_SECRET = 'only for these tests, long enough'
  database = await filledDemo()
  const all = await thingsOf(database)
  const { jobId } = await database.client.visit.findUniqueOrThrow({ where: { id: all.released[0] ?? '' } })
  const { path } = await makeCustomerLink(owner, { jobId }, { now })
  things = thingPages(owner, now, all, path.replace('/s/', ''))
  fillShop(database.url, 0, 20, now)
  for (const name of names) few.set(name, (await selectsOf(lists[name])).length)
  fillShop(database.url, 20, 1980, now)
  await fillLists(database, Math.ceil(mostRows * 1.2), now)
})

describe('with 2,000 heads', () => {
  it.each(names)('%s asks no more than with 20', async (name) => {
    const { length } = await selectsOf(lists[name])
    expect(length).toBeGreaterThan(0)
    // The second page of a short list is empty, and then less is asked: it is held against the first page.
    if (name.endsWith(later)) expect(length).toBeLessThanOrEqual(few.get(name.replace(later, '') as typeof name) ?? 0)
    else expect(length).toBe(few.get(name))
    expect(length).toBeLessThanOrEqual(atMost[name] ?? 14)
  })

  it.each(names)('%s reads no growing table from end to end', async (name) => {
    expect(scansOf(database.url, await statementsOf(lists[name]))).toEqual([])
  })

  it.each(thingNames)('%s reads no growing table from end to end', async (name) => {
    expect(scansOf(database.url, await statementsOf(things[name] ?? (() => Promise.reject(new Error(name)))))).toEqual(
      [],
    )
  })

  it.each(names)('%s brings no list to its end', async (name) => {
    expect(queriesOfMoreThan(mostRows, database.url, await statementsOf(lists[name]))).toEqual([])
  })

  it.each(thingNames)('%s brings no list to its end', async (name) => {
    const look = things[name] ?? (() => Promise.reject(new Error(name)))
    expect(queriesOfMoreThan(mostRows, database.url, await statementsOf(look))).toEqual([])
  })

  it('a query that does is seen', () => {
    const sent = [{ sql: 'SELECT "id" FROM "Vendor" WHERE "retiredAt" IS NULL', args: [] }]
    expect(queriesOfMoreThan(mostRows, database.url, sent)).toHaveLength(1)
  })

  it('a head that was put there past the client opens, on the floor and long gone', async () => {
    for (const headId of ['h00010', 'h00011']) expect(await seeHead(owner, headId)).toMatchObject({ headId })
    const { screens } = await seeStation(owner, 'measuring-bench', null, now)
    expect(screens.filter(({ visitId }) => visitId.startsWith('v00')).length).toBeGreaterThan(0)
  })

  it('no use case that looks something up is left out', () => {
    const pages = readFileSync('tests/use-cases/pages/pages.ts', 'utf8')
    const files = readdirSync('lib/use-cases', { recursive: true, withFileTypes: true }).filter((file) => file.isFile())
    const looks = files.flatMap(({ parentPath, name: file }) =>
      [
        ...readFileSync(join(parentPath, file), 'utf8').matchAll(
          /^export (?:async function|const) ((?:see|find|print|spec|newest)\w+)/gm,
        ),
      ].map(([, name = '']) => name),
    )
    expect(looks.length).toBeGreaterThan(60)
    expect(looks.filter((name) => !new RegExp(`\\b${name}\\(`).test(pages))).toEqual([])
  })

  it('a statement that does is seen', () => {
    const sql = `SELECT "id" FROM "Visit" v WHERE v."side" = 'left'`
    expect(scansOf(database.url, [{ sql, args: [] }])).toHaveLength(1)
  })

  it.each([
    ['TagAssignment_headId_idx', 'queue'],
    ['VisitPlace_whereabouts_idx', 'counter'],
    ['RouteStep_queue_stepId_idx', 'back room'],
    ['OutsideOrderVisit_receivedAt_idx', 'away'],
  ] as const)('without %s the %s page would', async (index, name) => {
    const sent = await statementsOf(lists[name])
    plainSqlite(database.url, (file) => file.exec(`DROP INDEX "${index}"`))
    expect(scansOf(database.url, sent)).not.toEqual([])
  })
})
