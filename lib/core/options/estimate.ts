import type { CastingFacts } from '../casting/figures'
import type { CutCaution } from '../cut/cautions'
import { ok, refuse, type Result } from '../errors'
import type { StepId } from '../route/step-ids'
import type { BenchQuestion, CutOption, Start, WayKind } from './bench-types'
import { presentMeanCc } from './bench-depth'
import { consequenceLines, type ConsequenceGroup } from './consequence-lines'
import { castingAsItIs } from './drawn-casting'
import { figureName } from './figure-names'
import { formatFigure } from '../units/format-figure'
import { chamberLines } from './plan-words'
import { wayAt } from './way-cut'
import { wayEffort, wayTitle } from './way-words'
import { waysOf } from './ways'

export type HeadSource = 'customer' | 'bought' | 'bought-cut'

export type EstimateLine = { readonly label: string; readonly value: string; readonly note: string }

/** An answer as it was given: words and figures as they stood, and what the drawing needs. */
export type EstimateAnswer = {
  readonly kind: WayKind
  readonly title: string
  readonly start: string
  readonly effort: string
  readonly lines: readonly EstimateLine[]
  readonly groups: readonly { readonly title: string; readonly lines: readonly EstimateLine[] }[]
  /** What could not be said, and the figures that would give it. */
  readonly unknown: readonly { readonly label: string; readonly needs: readonly string[] }[]
  readonly steps: readonly {
    readonly label: string
    readonly outside: boolean
    /** Left out in answers that were kept before it was: only the words are known then. */
    readonly stepId?: StepId | undefined
    /** What the list asked for it that day, a head, in minor units; null: it has no price. */
    readonly unitMinor?: number | null | undefined
  }[]
  /** Whose head it starts from, and what a bought one costs; left out in answers that were kept before it was. */
  readonly from?: { readonly source: HeadSource; readonly costMinor: number | null } | undefined
  readonly days: number | null
  /** A head; null: the shop has no price list. */
  readonly priceMinor: number | null
  readonly unpriced: readonly string[]
  readonly cautions: readonly CutCaution[]
  /** The other ways, in their order, with why they stand there. */
  readonly others: readonly { readonly title: string; readonly start: string; readonly why: string }[]
  readonly drawing: {
    readonly casting: CastingFacts
    readonly deepEdge: 'intake' | 'exhaust'
    readonly cut: { readonly flatIn: number; readonly angleIn: number; readonly angleDeg: number | null }
  }
}

/**
 * The chosen way as an estimate that can be kept.
 *
 * @param wayId from `waysOf`; @param angleIn where the slider stands on the line, 0–0.5 in; null: as the way proposes
 * @returns refused as `unreachable` when the way, or the place on its line, is ruled out
 */
export function estimateOf(question: BenchQuestion, wayId: string, angleIn: number | null): Result<EstimateAnswer> {
  const ways = waysOf(question)
  const proposed = ways.find(({ id }) => id === wayId)
  if (!proposed) return refuse('not-found', 'This option no longer fits the question. Choose again.')
  const way = angleIn === null ? ok(proposed) : wayAt(question, proposed.start, angleIn)
  if (!way.ok) return way
  if (way.value.ruledOut !== '') return refuse('unreachable', way.value.ruledOut)
  const others = ways.filter(({ id }) => id !== wayId)
  return ok({ ...worded(question, way.value), others: others.map(otherWay) })
}

function worded(question: BenchQuestion, way: CutOption): Omit<EstimateAnswer, 'others'> {
  const { start, worked } = way
  const { flatIn, angleIn, angleDeg } = worked?.record ?? { flatIn: 0, angleIn: 0, angleDeg: null }
  const groups = groupsOf(question, way)
  return {
    kind: way.kind,
    title: wayTitle(way),
    start: start.name,
    effort: wayEffort(way),
    lines: worked ? chamberLines(worked.record).map(lineOnly) : uncutLines(question, way),
    groups: groups
      .map(({ title, lines }) => ({
        title,
        lines: lines.filter(isKnown).map(lineOnly),
      }))
      .filter(({ lines }) => lines.length > 0),
    unknown: groups
      .flatMap(({ lines }) => lines.filter((line) => !isKnown(line)))
      .map(({ label, needs }) => ({ label, needs: needs.map(figureName) })),
    steps: way.steps.map(({ label, outside, stepId }) => ({
      label,
      outside,
      stepId,
      unitMinor: question.shop.prices?.[stepId] ?? null,
    })),
    from: { source: sourceOf(start), costMinor: start.supply === 'own' ? null : start.costMinor },
    days: way.days,
    priceMinor: way.priceMinor,
    unpriced: way.unpriced,
    cautions: way.cautions,
    drawing: {
      casting: castingAsItIs(start.heads, start.casting, start.deepEdge),
      deepEdge: start.deepEdge,
      cut: { flatIn, angleIn, angleDeg },
    },
  }
}

const sourceOf = ({ supply, cutByMaker }: Start): HeadSource =>
  supply === 'own' ? 'customer' : cutByMaker ? 'bought-cut' : 'bought'

function uncutLines({ targetCc }: BenchQuestion, { start, finishedCc, opensCc }: CutOption): EstimateLine[] {
  if (start.flatDeck) {
    const thicknessIn = start.heads[0]?.thicknessIn ?? null
    return thicknessIn === null
      ? []
      : [{ label: 'Thickness now', value: formatFigure(thicknessIn, 'thickness'), note: '' }]
  }
  const nowCc = presentMeanCc(start)
  const line = (label: string, cc: number | null, note = ''): EstimateLine[] =>
    cc === null ? [] : [{ label, value: `${cc.toFixed(1)} cc`, note }]
  return [
    ...line('Chamber now', nowCc, start.presentNominal ? 'nominal, not measured' : 'mean of all chambers'),
    ...line('Target', targetCc),
    ...(opensCc > 0 ? line('To be opened', opensCc, 'of each chamber') : []),
    ...line('Finished', finishedCc, 'predicted'),
  ]
}

const groupsOf = ({ shop }: BenchQuestion, { start, worked }: CutOption): readonly ConsequenceGroup[] =>
  worked
    ? consequenceLines({
        cut: { ...worked.record, milledWidthIn: start.casting.milledWidthIn },
        deepEdge: start.deepEdge,
        follows: worked.follows,
        ptvLeastIn: shop.ptvLeastIn,
        sealingMarginIn: shop.settings.sealingMarginIn,
        flatDeck: worked.flatDeck,
      })
    : []

/** Without what the bench's own screen needs beside it. */
const lineOnly = ({ label, value, note }: EstimateLine): EstimateLine => ({ label, value, note })

const isKnown = ({ needs }: { readonly needs: readonly string[] }): boolean => needs.length === 0

const otherWay = (way: CutOption) => ({
  title: wayTitle(way),
  start: way.start.name,
  why: way.ruledOut === '' ? way.why : `not possible: ${way.ruledOut}`,
})
