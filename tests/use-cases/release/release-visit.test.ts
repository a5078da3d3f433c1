import { describe, expect, it, vi } from 'vitest'
import { readFile } from '@/lib/data/files'
import { specOfRelease } from '@/lib/data/releases'
import { auditChanges } from '@/lib/data/stored/records'
import { releaseVisit } from '@/lib/use-cases/release/release-visit'
import { printSpecSheet } from '@/lib/use-cases/papers/print-spec-sheet'
import { correctReading } from '@/lib/use-cases/visits/correct-reading'
import { readPdf } from '@/tests/pdf/read-pdf'
import { describeOnBoth, testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, counter, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { readyToRelease, shopReadyToRelease, shopWithJob, versionOf, workThrough } from './whole-job'

// A whole job is lived through first.
vi.setConfig({ testTimeout: 120_000 })

const release = async (visitId: string, reason = '', actor = owner, op?: string) =>
  releaseVisit(actor, { visitId, version: await versionOf(visitId), reason }, at(monday, op))

const textOf = async (bytes: Uint8Array): Promise<string> => (await readPdf(bytes)).text

const factsOf = async ({ client }: TestDatabase, visitId: string, revision: number) => {
  const row = await client.release.findFirstOrThrow({ where: { visitId, revision } })
  return { row, spec: specOfRelease(row) }
}

async function correctFinished(database: TestDatabase, visitId: string, point: string, text: string): Promise<void> {
  const reading = await database.client.reading.findFirstOrThrow({
    where: { kind: 'cc', point, set: { visitId, stepId: 'finished' } },
  })
  const input = {
    visitId,
    readingId: reading.id,
    correction: 'replace' as const,
    text,
    // As is asked of a figure that the cut does not explain.
    again: text,
    reason: 'burette misread',
  }
  await correctReading(machinist, input, at(monday))
}

/** On PostgreSQL this is the journey of a job from the booking to the release, with the readings of each step. */
describeOnBoth('a released head', (open) => {
  it('freezes the facts and the very bytes of the paper', async () => {
    const database = await open()
    const { job, first, second } = await readyToRelease(database)
    const { revision, warnings } = await release(first.visitId)
    expect(revision).toBe(1)
    expect(warnings).toContain(`Its mate ${second.tag} is not ready.`)
    const { row, spec } = await factsOf(database, first.visitId, 1)
    const bytes = await readFile(row.pdfSha256)
    const file = await database.client.file.findUniqueOrThrow({ where: { sha256: row.pdfSha256 } })
    expect(file).toMatchObject({ size: bytes.length, type: 'application/pdf' })
    const printed = await printSpecSheet(counter, first.visitId)
    expect(Buffer.compare(printed.bytes, bytes)).toBe(0)
    const place = await database.client.visitPlace.findUniqueOrThrow({ where: { visitId: first.visitId } })
    expect(place.whereabouts).toBe('released')
    const audit = await database.client.auditEntry.findFirstOrThrow({ where: { action: 'release.make' } })
    expect(auditChanges.read(audit.changes, audit.seq)).toMatchObject({ revision: 1, pdfSha256: row.pdfSha256 })

    expect(spec).toMatchObject({
      tag: first.tag,
      pairTags: [second.tag],
      jobNumber: job.number,
      side: 'left bank',
    })
    const text = await textOf(bytes)
    for (const words of [first.tag, job.number, 'Tamsin Rook', '61.0', '18 thou']) expect(text).toContain(words)
    expect(text).not.toContain('internal')
  })
})

describe('releasing a head', () => {
  it('is refused with every missing thing in words and the way to it', async () => {
    const database = await testDatabase()
    const job = await shopWithJob(database)
    const visitId = job.heads[0]?.visitId ?? ''
    await workThrough(visitId, ['flat-cut'])
    const refusal = await refusalOf(release(visitId))
    expect(refusal.code).toBe('incomplete')
    const { gaps } = refusal as { gaps?: { message: string; href: string }[] }
    expect(gaps?.map((gap) => gap.message)).toContain('Final inspection: not done')
    const finished = gaps?.find((gap) => gap.message === 'chamber 3 has no finished cc')
    expect(finished?.href).toBe(`/stations/measuring-bench/heads/${visitId}?step=finished`)
    expect(await database.client.release.count()).toBe(0)
    expect(await database.client.file.count()).toBe(0)
  })

  it('is the owner’s, or a deputy’s, and leaves nothing behind when somebody else tries', async () => {
    const { database, first } = await shopReadyToRelease()
    for (const actor of [machinist, counter]) {
      expect((await refusalOf(release(first.visitId, '', actor))).code).toBe('not-allowed')
    }
    expect(await database.client.release.count()).toBe(0)
    const deputy = { ...machinist, grants: ['release'] as const }
    expect((await release(first.visitId, '', deputy)).revision).toBe(1)
  })

  it('says what was measured, by hand-worked figures', async () => {
    const { database, first } = await shopReadyToRelease()
    await release(first.visitId)
    const { spec } = await factsOf(database, first.visitId, 1)
    expect(spec.chambers).toMatchObject({
      meanBeforeCc: '64.0',
      meanAfterCc: '61.0',
      spreadBeforeCc: '0.4',
      spreadAfterCc: '0.4',
      beforeWith: 'this head’s own valves, the engine’s own plug',
    })
    expect(spec.chambers?.rows[1]).toEqual({ chamber: '2', beforeCc: '63.8', afterCc: '61.1', remark: '' })
    // 3 cc at 6 thou a cc: 18 thou.
    expect(spec.cuts).toEqual([
      {
        what: 'Flat cut',
        planned: '0.0180 in',
        measured: '18 thou',
        how: 'depth from touch-off',
        by: 'in house',
      },
    ])
    expect(spec.removedSinceNew).toBe('0.0180 in at the deepest, over all visits')
    // Swept π/4·4²·3.48 = 43.731 in³ = 716.62 cc. Beside the chamber: gasket 12.566·0.020 + deck 12.566·0.050 = 0.8796 in³
    // = 14.415 cc, dish 5: 19.415 cc. Before (716.62 + 83.415)/83.415 = 9.591; after (716.62 + 80.415)/80.415 = 9.912.
    expect(spec.compression).toEqual({ before: '9.59 : 1', after: '9.91 : 1', needs: '' })
    const intake = spec.flow.find((run) => run.port === 'intake')
    // At 0.300 in: 150 before, 160 after: +10, of 150 6.67 %; two runs at 1 % scatter by 2·√2 % = 4.2 cfm.
    expect(intake?.rows[2]).toEqual({
      lift: '0.300 in',
      before: '150.0',
      after: '160.0',
      diffCfm: '+10.0',
      diffPercent: '+6.7',
      note: '',
    })
    expect(intake?.notLike).toEqual([])
    expect(intake?.title).toBe('Intake, chamber 2')
  })

  it('makes a new revision only after a correction, with its reason, and keeps the old one', async () => {
    const { database, first } = await shopReadyToRelease()
    await release(first.visitId)
    const before = await printSpecSheet(owner, first.visitId)
    expect((await refusalOf(release(first.visitId, 'again'))).code).toBe('wrong-state')

    await correctFinished(database, first.visitId, '1', '62.9')
    expect((await refusalOf(release(first.visitId))).fields.reason).toMatch(/what this revision corrects/)
    expect((await release(first.visitId, 'chamber 1 was misread')).revision).toBe(2)
    const { spec } = await factsOf(database, first.visitId, 2)
    const { spec: oldest } = await factsOf(database, first.visitId, 1)
    expect(oldest).not.toHaveProperty('earlier')
    expect(spec).toMatchObject({
      revision: 2,
      revisionReason: 'chamber 1 was misread',
      earlier: [{ revision: 1, reason: '', releasedBy: oldest.releasedBy, releasedAt: oldest.releasedAt }],
    })
    // 62.9 against 61.0 ± 0.5: out by 1.9, and the sheet says so.
    expect(spec.chambers?.rows[0]).toMatchObject({ afterCc: '62.9', remark: '1.90 cc over the target' })
    expect(spec.notes.join()).toContain('chamber 1 is 1.9 cc over the target')

    const old = await printSpecSheet(owner, first.visitId, 1)
    expect(Buffer.compare(old.bytes, before.bytes)).toBe(0)
    const now = await printSpecSheet(owner, first.visitId)
    const words = (await textOf(now.bytes)).replace(/\s+/g, ' ')
    expect(words).toContain('This is revision 2: chamber 1 was misread.')
    expect(words).toContain('Takes the place of revision 1, released by')
    expect((await refusalOf(printSpecSheet(owner, first.visitId, 3))).code).toBe('not-found')
  })

  it('refuses a head that changed since it was looked at, and answers the same operation the same way', async () => {
    const { database, first } = await shopReadyToRelease()
    const version = await versionOf(first.visitId)
    const stale = releaseVisit(owner, { visitId: first.visitId, version: version - 1, reason: '' }, at(monday))
    expect((await refusalOf(stale)).code).toBe('conflict')
    const input = { visitId: first.visitId, version, reason: '' }
    const once = await releaseVisit(owner, input, at(monday, 'op-release'))
    const twice = await releaseVisit(owner, input, at(monday, 'op-release'))
    expect(twice).toEqual(once)
    expect(await database.client.release.count()).toBe(1)
  })
})
