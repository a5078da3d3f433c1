import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { RefusedError } from '@/lib/core/errors'
import { auditChanges } from '@/lib/data/stored/records'
import { changeTagSchema, takeOffTagSchema } from '@/lib/schemas/tag'
import { returnAsIsSchema } from '@/lib/schemas/visit'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { handOverSchema } from '@/lib/schemas/release'
import { handOver } from '@/lib/use-cases/hand-over/hand-over'
import { changeTag } from '@/lib/use-cases/heads/change-tag'
import { seeHead } from '@/lib/use-cases/heads/see-head'
import { takeOffTag } from '@/lib/use-cases/heads/take-off-tag'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, book, counter, head, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

vi.setConfig({ testTimeout: 60_000 })

let database: TestDatabase
let job: BookedJob
const headOf = (place: number): string => job.heads[place]?.headId ?? ''
const later = (minutes: number) => at(new Date(monday.getTime() + minutes * 60_000))

beforeEach(async () => {
  database = await testDatabase()
  await openShop(database)
  job = await book({ heads: [head({ stamp: 'Q7' }), head({ stamp: 'Q8' })] })
})

const versionOf = async (headId: string) => (await seeHead(owner, headId)).version
const change = async (actor: Actor, place: number, number: string, minutes = 1) =>
  changeTag(
    actor,
    changeTagSchema.parse({ headId: headOf(place), version: await versionOf(headOf(place)), number, reason: 'lost' }),
    later(minutes),
  )
const takeOff = async (actor: Actor, place: number) =>
  takeOffTag(
    actor,
    takeOffTagSchema.parse({ headId: headOf(place), version: await versionOf(headOf(place)), reason: '' }),
    later(5),
  )
const jump = async (q: string) => (await findAnything(counter, { q })).jump

async function leave(place: number): Promise<void> {
  const visitId = job.heads[place]?.visitId ?? ''
  await returnAsIs(owner, returnAsIsSchema.parse({ visitId, reason: 'the customer wants it back' }), later(2))
  const heads = [{ visitId, side: 'not said', partsBack: '' }]
  const given = { jobId: job.jobId, takenBy: 'Tamsin Rook', note: '', heads, unpaidReason: 'goes back as is' }
  await handOver(owner, handOverSchema.parse(given), later(3))
}

describe('another number on a head', () => {
  it('is worn from now on, and the old one still finds it', async () => {
    expect(await change(counter, 0, 'spare-9')).toEqual({ tag: 'SPARE-9' })
    const view = await seeHead(machinist, headOf(0))
    expect([view.tag, view.wornTag, view.oldTags]).toEqual(['SPARE-9', 'SPARE-9', ['T-0401']])
    expect([await jump('SPARE-9'), await jump('T-0401')]).toEqual([`/heads/${headOf(0)}`, `/heads/${headOf(0)}`])
    const entry = await database.client.auditEntry.findFirstOrThrow({ where: { action: 'head.tag' } })
    expect(auditChanges.read(entry.changes, entry.seq)).toEqual({ was: 'T-0401', now: 'SPARE-9', reason: 'lost' })
  })

  it('is the next of the shop’s own when none is typed', async () => {
    expect(await change(owner, 0, '')).toEqual({ tag: 'T-0403' })
    expect((await seeHead(owner, headOf(0))).oldTags).toEqual(['T-0401'])
  })

  it('is refused when another head wears it: which, with a link, and nothing is changed', async () => {
    const work = change(counter, 0, '402')
    const refused = await work.catch((error: unknown) => error)
    expect(refused).toBeInstanceOf(RefusedError)
    expect((refused as RefusedError).refusal).toMatchObject({
      code: 'invalid',
      fields: { number: expect.stringContaining(`job ${job.number}`) as string },
      gaps: [{ message: 'Head with tag T-0402', href: `/heads/${headOf(1)}` }],
    })
    expect((await seeHead(owner, headOf(0))).wornTag).toBe('T-0401')
  })

  it('is refused when it wears it already, when it is no tag, and when somebody was faster', async () => {
    expect((await refusalOf(change(counter, 0, 'T-401'))).message).toBe('This head already has tag T-0401.')
    expect((await refusalOf(change(counter, 0, 'no tag!'))).fields.number).toContain('letters, figures and dashes')
    const stale = changeTagSchema.parse({ headId: headOf(0), version: 99, number: '', reason: 'lost' })
    expect((await refusalOf(changeTag(counter, stale, later(1)))).code).toBe('conflict')
    expect(changeTagSchema.safeParse({ ...stale, reason: ' ' }).success).toBe(false)
  })

  it('is not the machinist’s to give or to take', async () => {
    expect((await refusalOf(change(machinist, 0, ''))).code).toBe('not-allowed')
    await leave(0)
    expect((await refusalOf(takeOff(machinist, 0))).code).toBe('not-allowed')
    expect((await seeHead(owner, headOf(0))).wornTag).toBe('T-0401')
  })
})

describe('a tag that comes off', () => {
  it('is refused while the head is here: its job is named, with a link', async () => {
    const refused = await refusalOf(takeOff(counter, 0))
    expect(refused).toMatchObject({ code: 'wrong-state', gaps: [{ href: `/jobs/${job.number}` }] })
    expect(refused.message).toContain(job.number)
  })

  it('may be used again once the head has left; the number finds both, the wearer first', async () => {
    await leave(0)
    expect(await takeOff(counter, 0)).toEqual({ tag: 'T-0401' })
    const view = await seeHead(owner, headOf(0))
    // It is still called by the last it wore.
    expect([view.tag, view.wornTag, view.oldTags]).toEqual(['T-0401', '', ['T-0401']])
    expect((await refusalOf(takeOff(counter, 0))).message).toBe('This head has no tag.')
    expect(await jump('T-0401')).toBe(`/heads/${headOf(0)}`)
    await change(counter, 1, '401', 9)
    const found = await findAnything(counter, { q: 'T-0401' })
    expect(found.jump).toBe(`/heads/${headOf(1)}`)
    expect(found.hits.map(({ href }) => href)).toContain(`/heads/${headOf(0)}`)
    expect((await findAnything(counter, { q: 'Q7' })).hits.map(({ href }) => href)).toEqual([`/heads/${headOf(0)}`])
    expect((await seeHead(owner, headOf(0))).visits).toHaveLength(1)
  })
})
