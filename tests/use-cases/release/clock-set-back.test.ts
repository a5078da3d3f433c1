import { expect, it, vi } from 'vitest'
import { loadDossier } from '@/lib/dossier/dossier'
import { specOfRelease } from '@/lib/data/releases'
import { seeTrail } from '@/lib/use-cases/back-room/see-trail'
import { releaseVisit } from '@/lib/use-cases/release/release-visit'
import { testDatabase } from '@/tests/setup/database'
import { at, monday, owner } from '../jobs/counter-shop'
import { makeFlatPlan, shopWithJob, versionOf, workThrough } from './whole-job'

vi.setConfig({ testTimeout: 120_000 })

const hour = 3_600_000
const after = (hours: number): Date => new Date(monday.getTime() + hours * hour)

/** The booking stands on Monday; each deed after it a minute later than the one before, until somebody sets the clock. */
function handSetClock() {
  let now = monday.getTime()
  return {
    pass: () => new Date((now += 60_000)),
    set: (moment: Date) => (now = moment.getTime()),
  }
}

it('a clock that is set back between booking and release refuses nothing, and the trail keeps the order of the deeds', async () => {
  const database = await testDatabase()
  const clock = handSetClock()
  const job = await shopWithJob(database)
  const visitId = job.heads[0]?.visitId ?? ''
  clock.set(after(30))
  await workThrough(visitId, ['flat-cut'], () => undefined, clock.pass)
  await makeFlatPlan(job)
  await workThrough(visitId, ['seat-after', 'finished'], () => undefined, clock.pass)
  // A day and a half back: before the booking.
  clock.set(after(-6))
  await workThrough(visitId, ['hand-over'], () => undefined, clock.pass)
  const { revision } = await releaseVisit(
    owner,
    { visitId, version: await versionOf(visitId), reason: '' },
    at(clock.pass()),
  )
  expect(revision).toBe(1)

  // What counts is the order of the deeds, not of the times: the finished cc is the last one, the cut is done, in one go.
  const head = await loadDossier(database.client, visitId)
  expect(
    head.route.filter(({ state }) => state !== 'done' && state !== 'not needed').map(({ stepId }) => stepId),
  ).toEqual(['hand-over'])
  const release = await database.client.release.findFirstOrThrow({ where: { visitId } })
  expect(specOfRelease(release).chambers).toMatchObject({ meanBeforeCc: '64.0', meanAfterCc: '61.0' })
  const events = await database.client.visitEvent.findMany({ where: { visitId }, orderBy: { seq: 'asc' } })
  expect(events.at(-1)?.kind).toBe('release')

  // The trail, newest first, ends with the release, though its time lies before the cut's.
  const lines = (await seeTrail(owner, { find: '', before: null })).lines
  const place = (words: RegExp) => lines.findIndex(({ sentence }) => words.test(sentence))
  expect(place(/released/i)).toBeGreaterThanOrEqual(0)
  expect(place(/released/i)).toBeLessThan(place(/flat cut/i))
})
