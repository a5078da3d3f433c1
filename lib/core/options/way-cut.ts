import type { TargetLine } from '../cut/target-line'
import { ok, refuse, type Result } from '../errors'
import { formatThou } from '../units/format-figure'
import { quantities } from '../units/quantities'
import { targetDepthIn } from './bench-depth'
import type { BenchQuestion, Start, CutOption } from './bench-types'
import { inputsOf } from './inputs-of'
import { lineOf } from './line-of'
import { workedPlan, type PlanChoiceFigures, type WorkedPlan } from './plan-record-of'
import { wayOf } from './way-of'

export type CutWay = 'clean-up' | 'flat' | 'equalise' | 'angle-flat' | 'angle'

/** The way of one kind of cut from one starting head, worked out, or with what rules it out. */
export function cutWay(question: BenchQuestion, start: Start, kind: CutWay): CutOption {
  const found =
    kind === 'clean-up' || kind === 'equalise' || (kind === 'flat' && start.flatDeck)
      ? plain(question, start, kind)
      : onLine(question, start, kind)
  if (!found.ok) return wayOf(question, start, { kind, worked: null, ruledOut: found.refusal.message })
  return wayOf(question, start, { kind, ...found.value, cautions: kind === 'angle' ? [allOutside] : [] })
}

/** Metal does not go back on: without a flat part nothing corrects what the vendor leaves. */
const allOutside = { code: 'all-outside' } as const

type Found = { readonly worked: WorkedPlan | null; readonly ruledOut: string }

/** A clean-up has no target, a flat-deck head is cut to a thickness, and an equalising cut goes by the largest chamber: neither lies on the line of the mean. */
function plain(question: BenchQuestion, start: Start, kind: 'clean-up' | 'equalise' | 'flat'): Result<Found> {
  const ground = { ...inputsOf(question, start), equalise: kind === 'equalise' }
  const worked = workedPlan(ground, choice(question, kind === 'clean-up' ? 'clean-up' : 'flat'))
  return worked.ok ? ok({ worked: worked.value, ruledOut: '' }) : worked
}

function onLine(question: BenchQuestion, start: Start, kind: 'flat' | 'angle-flat' | 'angle'): Result<Found> {
  const line = lineFrom(question, start)
  if (!line.ok && kind === 'flat') return flatWithoutLine(question, start, line)
  if (!line.ok) return line
  const angleIn = kind === 'flat' ? ok(0) : angleOf(question, start, kind, line.value)
  if (!angleIn.ok) return angleIn
  const worked = cutOnLine(question, start, angleIn.value, kind)
  const ruledOut = offStretch(line.value, angleIn.value)
  if (!worked.ok) return ruledOut === '' ? worked : ok({ worked: null, ruledOut })
  return ok({ worked: worked.value, ruledOut })
}

/**
 * Without the chamber's centre there is no line, and a flat cut still goes. Where no cut at all goes, the flat one says
 * most plainly what stands against it, with its figures.
 */
function flatWithoutLine(
  question: BenchQuestion,
  start: Start,
  line: Extract<Result<TargetLine>, { ok: false }>,
): Result<Found> {
  const flat = cutOnLine(question, start, 0)
  if (!flat.ok) return flat
  return line.refusal.code === 'missing' ? ok({ worked: flat.value, ruledOut: '' }) : line
}

/** The line of cuts that reach the question's target from one starting head. */
export function lineFrom(question: BenchQuestion, start: Start): Result<TargetLine> {
  const depthIn = targetDepthIn(question, start)
  if (!depthIn.ok) return depthIn
  if (depthIn.value <= 0) {
    return refuse('unreachable', 'The target is not below what the chambers hold: cutting makes them smaller.')
  }
  if (!(depthIn.value <= quantities.cutDepth.most)) {
    return refuse('unreachable', 'The target would take more off the deck than any head has to give.')
  }
  return lineOf({
    depthIn: depthIn.value,
    casting: start.casting,
    heads: start.heads,
    deepEdge: start.deepEdge,
    limits: inputsOf(question, start).limits,
    sealingMarginIn: question.shop.settings.sealingMarginIn,
  })
}

/** Depths below this are not worth a set-up: a mill is set to half a thou. */
const leastIn = 0.0005

/** The whole angle; or what leaves the shop's margin flat, moved to where the limits allow it. */
function angleOf(
  { shop }: BenchQuestion,
  { thouPerCc }: Start,
  kind: 'angle-flat' | 'angle',
  line: TargetLine,
): Result<number> {
  if (kind === 'angle') return ok(line.allAngleIn)
  const marginIn = (shop.marginCc * thouPerCc) / 1000
  const wantedIn = line.allAngleIn * Math.max(0, 1 - marginIn / line.allFlatIn)
  const angleIn = Math.min(line.to.angleIn, Math.max(line.from.angleIn, wantedIn))
  if (angleIn >= leastIn) return ok(Math.floor(angleIn / leastIn + 1e-9) * leastIn)
  return refuse(
    'unreachable',
    line.to.angleIn < leastIn
      ? `No angle at all: ${line.to.boundBy}.`
      : `The whole cut is ${formatThou(line.allFlatIn)}, no more than what is left flat for the last cut in house.`,
  )
}

/**
 * The way that a place on the line is: with its own depths, steps, days and cautions, and with what rules it out there.
 *
 * @param angleIn angle part in inches, 0–0.5; 0: all flat
 * @returns refused when there is no line, or nothing can be worked out at that place of it
 */
export function wayAt(question: BenchQuestion, start: Start, angleIn: number): Result<CutOption> {
  const line = lineFrom(question, start)
  if (!line.ok) return line
  const kind = angleIn === 0 ? 'flat' : line.value.allAngleIn - angleIn < leastIn / 2 ? 'angle' : 'angle-flat'
  const worked = cutOnLine(question, start, angleIn, kind)
  const ruledOut = offStretch(line.value, angleIn)
  if (!worked.ok && ruledOut === '') return worked
  const cautions = kind === 'angle' ? [allOutside] : []
  return ok(wayOf(question, start, { kind, worked: worked.ok ? worked.value : null, ruledOut, cautions }))
}

/** A cut at one place of the line. `kind` names the ends; left out, it is read off the angle part. */
export function cutOnLine(
  question: BenchQuestion,
  start: Start,
  angleIn: number,
  kind: 'flat' | 'angle-flat' | 'angle' = angleIn > 0 ? 'angle-flat' : 'flat',
): Result<WorkedPlan> {
  return workedPlan(inputsOf(question, start), choice(question, kind, angleIn))
}

/** Why a place lies outside the stretch that the limits leave; '' inside it. */
export function offStretch({ from, to }: TargetLine, angleIn: number): string {
  if (angleIn < from.angleIn - leastIn / 2) {
    return `Ruled out by ${from.boundBy}: the angle part must be at least ${formatThou(from.angleIn)}.`
  }
  if (angleIn > to.angleIn + leastIn / 2) {
    return `Ruled out by ${to.boundBy}: the angle part can be at most ${formatThou(to.angleIn)}.`
  }
  return ''
}

const choice = (
  { stopAtIn, sinkIn }: BenchQuestion,
  kind: 'clean-up' | 'flat' | 'angle-flat' | 'angle',
  angleIn = 0,
): PlanChoiceFigures => ({
  kind,
  splitBy: 'angle',
  flatIn: null,
  angleIn,
  angleDeg: null,
  stopAtIn,
  sinkIn,
})
