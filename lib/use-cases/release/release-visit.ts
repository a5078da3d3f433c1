import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, ok, refuse, RefusedError, type Result } from '@/lib/core/errors'
import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import { addFileRow, storeFile, type StoredFile } from '@/lib/data/files'
import { addRelease, isAllReady } from '@/lib/data/releases'
import { addEvent, bumpVisit } from '@/lib/data/visits'
import { loadDossier } from '@/lib/dossier/dossier'
import { sendByItself } from '@/lib/dossier/messages/send-by-itself'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { releaseVisitSchema } from '@/lib/schemas/release'
import { printSpec } from '@/lib/papers/print-spec'
import { mayRelease } from './may-release'
import { releaseDraft } from './release-draft'

type Input = z.output<typeof releaseVisitSchema>

export type Released = {
  readonly visitId: string
  readonly revision: number
  /** An unpaid balance, a mate that is not ready: told, never in the way. */
  readonly warnings: readonly string[]
}

type Prepared = {
  readonly spec: SpecSheetData
  readonly pdf: StoredFile
  readonly revision: number
  readonly warnings: readonly string[]
}

/**
 * Freezes the spec sheet: its facts and the very bytes of its paper. A later release is a new revision, only after a
 * correction and with its reason; the old one is kept. The paper is made and stored before the transaction, which holds
 * nothing but rows and finds out whether anything changed meanwhile.
 */
export async function releaseVisit(actor: Actor, input: Input, moment: Moment): Promise<Released> {
  must(allow(actor, 'visit.release'))
  const prepared = await prepare(actor, input, moment.now)
  return write(actor, moment, async (ctx) => {
    // Refused in here only: the same operation sent again is answered before anything is decided anew.
    const { spec, pdf, revision, warnings } = must(prepared)
    const found = await loadDossier(ctx.tx, input.visitId)
    must(mayRelease(found, input.reason))
    await bumpVisit(ctx.tx, { id: input.visitId, version: input.version })
    await addFileRow(ctx.tx, pdf, 'application/pdf', ctx.now)
    const { jobId } = found.visit
    const release = { visitId: input.visitId, revision, spec, pdfSha256: pdf.sha256, reason: input.reason }
    const releaseId = await addRelease(ctx, release)
    await addEvent(ctx, input.visitId, 'release', null, { note: input.reason })
    ctx.audit({
      action: 'release.make',
      subjectId: releaseId,
      visitId: input.visitId,
      jobId,
      changes: { revision, pdfSha256: pdf.sha256, reason: input.reason },
    })
    await refreshRoute(ctx.tx, input.visitId, ctx.now)
    await tellCustomer(ctx, jobId, revision)
    return { visitId: input.visitId, revision, warnings }
  })
}

/** Texts that the owner turned on: the sheet of this head, and that the job is ready once its last head is. */
async function tellCustomer(ctx: Write, jobId: string, revision: number): Promise<void> {
  await sendByItself(ctx, 'spec-sheet', jobId)
  // A corrected sheet makes nothing ready that was not.
  if (revision === 1 && (await isAllReady(ctx.tx, jobId))) await sendByItself(ctx, 'ready', jobId)
}

async function prepare(actor: Actor, input: Input, now: Date): Promise<Result<Prepared>> {
  try {
    const draft = await releaseDraft(actor, input, now)
    if (draft.version !== input.version) {
      return refuse('conflict', 'Someone else changed this head. Check it, then release it.')
    }
    const { spec, revision, warnings, setting } = draft
    return ok({ spec, revision, warnings, pdf: await storeFile(await printSpec(spec, setting)) })
  } catch (error) {
    if (error instanceof RefusedError) return { ok: false, refusal: error.refusal }
    throw error
  }
}
