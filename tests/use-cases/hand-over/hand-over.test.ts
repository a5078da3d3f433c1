import { describe, expect, it, vi } from 'vitest'
import { handOverSchema } from '@/lib/schemas/release'
import { seeCounter } from '@/lib/use-cases/counter/see-counter'
import { handOver } from '@/lib/use-cases/hand-over/hand-over'
import { seeHandOver } from '@/lib/use-cases/hand-over/see-hand-over'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { releaseVisit } from '@/lib/use-cases/release/release-visit'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { testDatabase } from '@/tests/setup/database'
import { at, counter, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { bookAnother, shopReadyToRelease, shopWithJob, versionOf } from '../release/whole-job'

vi.setConfig({ testTimeout: 120_000 })

const given = (jobId: string, visitIds: readonly string[]) =>
  handOverSchema.parse({
    jobId,
    takenBy: 'Tamsin Rook',
    note: '',
    heads: visitIds.map((visitId) => ({ visitId, side: 'left', partsBack: '' })),
  })

describe('handing heads over', () => {
  it('is refused before release, with why and nothing written', async () => {
    const database = await testDatabase()
    const job = await shopWithJob(database)
    const ids = job.heads.map((head) => head.visitId)
    const view = await seeHandOver(counter, job.number)
    expect(view.heads[0]?.whyNot).toMatch(/^Not released: \d+ items missing\.$/)
    expect(view.balance).toEqual({ code: 'to-pay', minor: 19100 })
    expect((await refusalOf(handOver(counter, given(job.jobId, ids), at(monday)))).message).toMatch(
      /T-0401 is not released/,
    )
    expect((await refusalOf(handOver(machinist, given(job.jobId, ids), at(monday)))).code).toBe('not-allowed')
    expect(await database.client.handOver.count()).toBe(0)
  })

  it('takes what is released or goes back as it is, all or none, or one of a pair while the other stays, and ticks the step with its answers', async () => {
    const { database, job, first, second } = await shopReadyToRelease()
    await releaseVisit(
      owner,
      { visitId: first.visitId, version: await versionOf(first.visitId), reason: '' },
      at(monday),
    )

    const payment = { amount: '191.00', method: 'card', how: '', confirmed: false } as const
    const both = { ...given(job.jobId, [first.visitId, second.visitId]), payment }
    expect((await refusalOf(handOver(counter, both, at(monday)))).message).toContain(`${second.tag} is not released`)
    expect(await database.client.handOver.count()).toBe(0)

    // One of the pair goes, the other stays in the shop and the job open.
    const one = { ...both, heads: both.heads.slice(0, 1) }
    expect(await handOver(counter, one, at(monday))).toMatchObject({ tags: [first.tag] })
    const half = await seeJob(counter, { number: job.number, now: monday })
    expect([half.isOpen, ...half.heads.map(({ whereabouts }) => whereabouts)]).toEqual([
      true,
      'handed over',
      'expected',
    ])
    expect((await refusalOf(handOver(counter, one, at(monday)))).code).toBe('wrong-state')

    const place = (visitId: string) => database.client.visitPlace.findUniqueOrThrow({ where: { visitId } })
    const aYearOn = new Date('2027-03-09T12:00:00Z')
    const late = async () => (await seeJob(counter, { number: job.number, now: aYearOn })).daysLeft
    expect(await late()).toBeLessThan(0)
    await returnAsIs(counter, { visitId: second.visitId, reason: 'pulled' }, at(monday))
    // What goes back without further work lies here until somebody takes it.
    const inHand = async () => (await seeCounter(counter, { now: monday })).ready.map(({ number }) => number)
    expect([(await place(second.visitId)).whereabouts, await inHand()]).toEqual(['returned as is', [job.number]])
    const other = given(job.jobId, [second.visitId])
    expect(await handOver(counter, other, at(monday))).toMatchObject({ tags: [second.tag], receiptId: null })
    // What has left is not late, however long ago it was promised.
    expect(await late()).toBeNull()
    expect((await place(first.visitId)).whereabouts).toBe('handed over')
    expect([(await place(second.visitId)).whereabouts, await inHand()]).toEqual(['handed over', []])
    const answers = await database.client.reading.findMany({
      where: { set: { visitId: first.visitId, stepId: 'hand-over' } },
      orderBy: { kind: 'asc' },
      select: { kind: true, text: true },
    })
    expect(answers).toEqual([
      { kind: 'parts-returned', text: 'nothing' },
      { kind: 'side', text: 'left' },
      { kind: 'taken-by', text: 'Tamsin Rook' },
    ])
    const step = await database.client.routeStep.findFirstOrThrow({
      where: { visitId: first.visitId, stepId: 'hand-over' },
    })
    expect(step.state).toBe('done')
    expect((await refusalOf(handOver(counter, given(job.jobId, [first.visitId]), at(monday)))).code).toBe('wrong-state')
    expect((await seeHandOver(counter, job.number)).heads[0]?.gone?.to).toBe('Tamsin Rook')
  })

  it('knows no head of another job', async () => {
    const job = await shopWithJob(await testDatabase())
    const other = await bookAnother()
    const foreign = given(job.jobId, [other.heads[0]?.visitId ?? ''])
    expect((await refusalOf(handOver(counter, foreign, at(monday)))).code).toBe('not-found')
  })
})
