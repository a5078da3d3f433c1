import 'server-only'
import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import type { Reader } from './db'
import { newId } from './ids'
import { releaseFacts } from './stored/spec-sheet'
import type { Write } from './write'

/** A release of this visit: the newest, or the revision asked for; null: there is none such. */
export const releaseOf = (reader: Reader, visitId: string, revision?: number) =>
  reader.release.findFirst({
    where: { visitId, ...(revision === undefined ? {} : { revision }) },
    orderBy: { revision: 'desc' },
  })

export const specOfRelease = (release: { id: string; facts: string }): SpecSheetData =>
  releaseFacts.read(release.facts, release.id)

export type NewRelease = {
  readonly visitId: string
  readonly revision: number
  readonly spec: SpecSheetData
  readonly pdfSha256: string
  readonly reason: string
}

export async function addRelease(ctx: Write, release: NewRelease): Promise<string> {
  const id = newId(ctx.now)
  const { spec, ...rest } = release
  await ctx.tx.release.create({
    data: { ...rest, id, facts: releaseFacts.write(spec), at: ctx.now, byId: ctx.actor.personId },
  })
  return id
}

/** Whether every head of a job that is still here, and will be picked up, is released. */
export async function isAllReady(reader: Reader, jobId: string): Promise<boolean> {
  const unfinished = await reader.visit.findFirst({
    where: { jobId, scrappedAt: null, takenOffAt: null, returned: null, handOver: null, releases: { none: {} } },
    select: { id: true },
  })
  return unfinished === null
}
