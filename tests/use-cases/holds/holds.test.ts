import { beforeEach, describe, expect, it } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { decideHoldSchema, openHoldSchema } from '@/lib/schemas/visit'
import { decideHold } from '@/lib/use-cases/holds/decide-hold'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, book, counter, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

let database: TestDatabase
let visitId = ''
let holdId = ''

const open = (reason: string) =>
  openHold(machinist, openHoldSchema.parse({ visitId, stepId: null, reason }), at(monday))
const decide = (decision: string, more: object = {}, actor: Actor = owner) =>
  decideHold(
    actor,
    decideHoldSchema.parse({ holdId, version: 1, decision, note: 'seen by me', customerYes: '', ...more }),
    at(monday),
  )
const rows = () => database.client.hold.findMany({ orderBy: { id: 'asc' } })
const whereabouts = async () => (await database.client.visitPlace.findUniqueOrThrow({ where: { visitId } })).whereabouts

beforeEach(async () => {
  database = await testDatabase()
  await openShop(database)
  visitId = (await book()).heads[0]?.visitId ?? ''
  holdId = (await open('bent stud')).holdId
})

describe('a hold', () => {
  it('is put on by anybody who sees something wrong, and ended by the owner alone', async () => {
    const before = await rows()
    for (const actor of [counter, machinist, { ...machinist, grants: ['release', 'waive'] as const }]) {
      expect((await refusalOf(decide('rework', {}, actor))).code).toBe('not-allowed')
    }
    expect(await rows()).toEqual(before)
    expect(await whereabouts()).toBe('held')
    await decide('rework')
    expect(await rows()).toMatchObject([{ decision: 'rework', decisionNote: 'seen by me', decidedAt: monday }])
    expect(await whereabouts()).not.toBe('held')
  })

  it('is decided once: a second decision, and one by an old page, are conflicts', async () => {
    await decide('rework')
    const before = await rows()
    expect((await refusalOf(decide('scrap'))).code).toBe('conflict')
    expect((await refusalOf(decide('scrap', { version: 2 }))).code).toBe('conflict')
    expect(await rows()).toEqual(before)
    expect(await whereabouts()).not.toBe('scrapped')
  })

  it('of two stays on while one is open', async () => {
    await open('cracked boss')
    await decide('rework')
    expect(await whereabouts()).toBe('held')
  })

  it('that ends in scrap ends the visit: nothing more is held or done there', async () => {
    await decide('scrap')
    expect(await whereabouts()).toBe('scrapped')
    expect((await refusalOf(open('once more'))).code).toBe('wrong-state')
  })
})

describe('a decision', () => {
  const parsed = (input: object) =>
    decideHoldSchema.safeParse({ holdId, version: 1, decision: 'rework', note: 'n', customerYes: '', ...input })

  it('to use the head as it is names who of the customer said yes', () => {
    expect(parsed({ decision: 'use-as-is' }).error?.issues).toMatchObject([{ path: ['customerYes'] }])
    expect(parsed({ decision: 'use-as-is', customerYes: 'Silas, by phone' }).success).toBe(true)
    expect(parsed({ decision: 'scrap' }).success).toBe(true)
  })

  it('has its reason', () => {
    expect(parsed({ note: ' ' }).error?.issues).toMatchObject([{ path: ['note'] }])
  })
})
