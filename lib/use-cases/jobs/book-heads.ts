import { RefusedError } from '@/lib/core/errors'
import { headName } from '@/lib/core/shop/tag-number'
import { addHead, addOrderedLines, addPair, addVisit, nameCasting } from '@/lib/data/booking'
import { castingMaterials, flatDeckCastings } from '@/lib/data/castings-read'
import type { Reader } from '@/lib/data/db'
import { knownHeads, type KnownHead } from '@/lib/data/known-heads'
import { assignTag } from '@/lib/data/tags'
import type { Write } from '@/lib/data/write'
import type { BookedHead, BookJobInput } from '@/lib/schemas/job'
import type { AllWrong } from './all-wrong'

export type BookedVisit = {
  readonly visitId: string
  readonly headId: string
  readonly pairId: string
  /** "T-0412"; "26-0117 head 2" while it is on order. */
  readonly tag: string
}

const left = ['handed over', 'returned as is', 'taken off']

const wrong = (field: string, message: string): never => {
  throw new RefusedError({ code: 'invalid', message, fields: { [field]: message } })
}

/** What a job has already: a pair by its casting, and the place of its last head. */
type OnJob = { readonly pairs: ReadonlyMap<string | null, string>; readonly position: number }

/**
 * The heads of a booking: new ones added, known ones taken up again, one pair per casting, and a tag on each that is here.
 * A head that we buy gets its tag when it arrives; one whose number is typed lies on our shelf already.
 */
export async function bookHeads(
  ctx: Write,
  { id: jobId, number }: { readonly id: string; readonly number: string },
  input: Pick<BookJobInput, 'heads' | 'ordered' | 'targetCc'>,
  on: OnJob = { pairs: new Map(), position: 0 },
): Promise<BookedVisit[]> {
  const known = await knownHeads(ctx.tx, input.heads.map((head) => head.headId).filter(Boolean))
  const materials = await castingMaterials(ctx.tx, input.heads.map((head) => head.castingId).filter(Boolean))
  const castingIds = [
    ...input.heads.map((head) => head.castingId),
    ...[...known.values()].map((head) => head.castingId),
  ]
  const flatDecks = await flatDeckCastings(
    ctx.tx,
    castingIds.flatMap((id) => (id === null || id === '' ? [] : [id])),
  )
  const pairs = new Map(on.pairs)
  const booked: BookedVisit[] = []
  for (const [at, head] of input.heads.entries()) {
    checkCasting(head, materials, at)
    const before = knownHead(head, known, booked, at)
    const castingId = before?.castingId ?? (head.castingId || null)
    const isFlatDeck = castingId !== null && flatDecks.has(castingId)
    const headId = await takeHead(ctx, head, before, castingId, materials)
    const pairId = pairs.get(castingId) ?? (await addPair(ctx, jobId, castingId))
    pairs.set(castingId, pairId)
    const tag = isHere(head, before)
      ? await assignTag(ctx, headId, head.tag, `heads.${at}.tag`)
      : headName([], number, on.position + at + 1)
    const visitId = await addVisit(ctx, {
      ...visitFields(head),
      ...(isFlatDeck ? { presentCc: null } : {}),
      jobId,
      headId,
      pairId,
      position: on.position + at + 1,
      // A job of several castings may have a target: it is for its heads with chambers.
      targetCc: isFlatDeck ? null : (head.targetCc ?? input.targetCc),
      comebackOfId: head.comeback ? (before?.visit?.id ?? null) : null,
    })
    await addOrderedLines(ctx, visitId, input.ordered)
    ctx.audit({
      action: 'visit.book',
      subjectId: visitId,
      jobId,
      visitId,
      changes: { headId, tag, ...visitFields(head), ordered: input.ordered.map((line) => line.work) },
    })
    booked.push({ visitId, headId, pairId, tag })
  }
  return booked
}

/** Before anything is written: each head's casting is on record, and one that was here before is free. */
export async function checkHeads(reader: Reader, heads: readonly BookedHead[], wrong: AllWrong): Promise<void> {
  const known = await knownHeads(reader, heads.map(({ headId }) => headId).filter(Boolean))
  const materials = await castingMaterials(reader, heads.map(({ castingId }) => castingId).filter(Boolean))
  for (const [at, head] of heads.entries()) {
    await wrong.of(() => checkCasting(head, materials, at))
    await wrong.of(() => knownHead(head, known, heads.slice(0, at), at))
  }
}

const isHere = (head: BookedHead, before: KnownHead | null): boolean =>
  head.source === 'customer' || head.tag !== null || (before?.tags.length ?? 0) > 0

function checkCasting(head: BookedHead, materials: ReadonlyMap<string, string>, at: number): void {
  if (head.castingId === '' || materials.has(head.castingId)) return
  wrong(`heads.${at}.castingId`, 'Casting not found. Choose another, or “not on record”.')
}

/** The head that was here before, when one was picked; refused while it is still on another job. */
function knownHead(
  head: BookedHead,
  known: ReadonlyMap<string, KnownHead>,
  booked: readonly { readonly headId: string }[],
  at: number,
): KnownHead | null {
  if (head.headId === '') return null
  const field = `heads.${at}.headId`
  const before = known.get(head.headId) ?? wrong(field, 'Head not found. Pick it again.')
  if (booked.some((entry) => entry.headId === before.id)) wrong(field, 'This head is picked twice.')
  const { visit } = before
  if (visit && visit.whereabouts !== null && !left.includes(visit.whereabouts)) {
    wrong(field, `This head is still on job ${visit.jobNumber} (${visit.whereabouts}).`)
  }
  return before
}

async function takeHead(
  ctx: Write,
  head: BookedHead,
  before: KnownHead | null,
  castingId: string | null,
  materials: ReadonlyMap<string, string>,
): Promise<string> {
  if (before) {
    if (before.castingId === null && castingId !== null) await nameCasting(ctx, before.id, castingId)
    return before.id
  }
  const material = head.material || (materials.get(head.castingId) ?? '')
  return addHead(ctx, {
    stamp: head.stamp,
    marks: head.marks,
    material,
    castingId,
    chamberForm: head.chamberForm,
  })
}

const visitFields = (head: BookedHead) => ({
  source: head.source,
  used: head.used,
  cameAssembled: head.cameAssembled,
  overheated: head.overheated,
  side: head.side,
  cameWith: head.cameWith,
  ownedBy: head.ownedBy,
  rackPlace: head.rackPlace,
  presentCc: head.presentCc,
  comebackCause: head.comeback ? head.comebackCause : '',
  comebackPays: head.comeback ? head.comebackPays : '',
})
