import { cutAsMade } from '@/lib/core/options/cut-as-made'
import { cutThroughSeats } from '@/lib/core/options/cut-through'
import { shopCutOf } from '@/lib/core/rate/shop-cut'
import { arrivalHolds, cutThroughHolds, type NamedHold } from '@/lib/core/options/own-holds'
import type { StepId } from '@/lib/core/route/step-ids'
import { newId } from '@/lib/data/ids'
import type { Write } from '@/lib/data/write'
import { ownHoldText } from '@/lib/words/own-holds'
import { cutFactsOf } from './cut-facts'
import { dossierOf, type Dossier } from './dossier'
import { headNow } from './head-now'
import { valuedAt } from './reading-text'

/** Where a cut is measured, and the seats after it. */
const measuresCut: readonly StepId[] = ['angle-cut', 'flat-cut', 'arrival-figures', 'seat-after']

/** What the answers of one step say that puts this head on hold, and has not done so before. */
function holdsCalledFor(dossier: Dossier, stepId: StepId): readonly NamedHold[] {
  const { visit, facts, readings } = dossier
  const found = [
    ...(stepId === 'arrival-count' ? arrivalHolds(readings, facts.orders) : []),
    ...(measuresCut.includes(stepId) ? seatHolds(dossier) : []),
  ]
  return found.filter(({ cause }) => !visit.holds.some((hold) => hold.cause === cause))
}

/** Seats that this visit's cuts, as they were measured, have gone through; new seats are other seats. */
function seatHolds(dossier: Dossier): readonly NamedHold[] {
  const { casting, engine, plan, visit, readings } = dossier
  const cut = shopCutOf(cutFactsOf(dossier))
  if (!cut?.edges || Math.max(cut.edges.deepIn, cut.edges.shallowIn) <= 0) return []
  if (visit.events.some(({ kind, stepId, seq }) => isNewSeat(kind, stepId) && seq > cut.seq)) return []
  const ofRecord = visit.head.casting?.deepEdge === 'intake' ? 'intake' : 'exhaust'
  const made = cutAsMade(cut.edges, plan?.deepEdge ?? ofRecord, casting)
  if (!made) return []
  const found = cutThroughSeats(
    {
      cut: { flatIn: made.flatIn, angleIn: made.angleIn, milledWidthIn: casting.milledWidthIn },
      casting: made.casting,
      engine,
      deepEdge: made.deepEdge,
      beforeCc: null,
      finishedCc: null,
      sinkIn: 0,
      heads: [headNow(dossier).head],
    },
    seatsAfter(readings, cut.seq),
  )
  return cutThroughHolds(found, cut.seq)
}

const isNewSeat = (kind: string, stepId: string | null): boolean =>
  kind === 'tick' && (stepId === 'seat-work' || stepId === 'inserts')

/** The last of each valve since the cut. */
function seatsAfter(readings: Dossier['readings'], cutSeq: number) {
  const read = valuedAt(
    readings.filter(({ seq }) => seq > cutSeq),
    'seat-after',
    'seat-depth',
  )
  const byValve = new Map(read.map(({ point, value }) => [point, value]))
  return [...byValve].map(([valve, depthFromDeckNowIn]) => ({ valve, depthFromDeckNowIn }))
}

/**
 * Puts the head on hold where what was just read calls for it: an arrival that is short, wrong or damaged, a seat that the
 * cut has gone through. The caller has the visit's lock.
 *
 * @returns the head with its holds, and why each was opened
 */
export async function holdByItself(
  ctx: Write,
  dossier: Dossier,
  stepId: StepId,
): Promise<{ readonly dossier: Dossier; readonly held: readonly string[] }> {
  const { visit } = dossier
  const called = holdsCalledFor(dossier, stepId)
  if (called.length === 0) return { dossier, held: [] }
  const opened: Dossier['visit']['holds'] = []
  for (const hold of called) {
    const reason = ownHoldText(hold)
    const id = newId(ctx.now)
    const row = { id, visitId: visit.id, stepId, reason, cause: hold.cause, openedAt: ctx.now }
    opened.push(
      await ctx.tx.hold.create({ data: { ...row, openedById: ctx.actor.personId, decisionNote: '', customerYes: '' } }),
    )
    ctx.audit({ action: 'hold.open', subjectId: id, visitId: visit.id, jobId: visit.jobId, changes: { reason } })
  }
  const { settings, today } = dossier
  const held = { ...visit, holds: [...visit.holds, ...opened] }
  return { dossier: dossierOf(held, settings, today, dossier), held: opened.map(({ reason }) => reason) }
}
