import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { pointLabel } from '@/lib/core/readings/points'
import { shopCutOf } from '@/lib/core/rate/shop-cut'
import type { RouteStep } from '@/lib/core/route/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { cornersFit } from '@/lib/core/straightness/corners-fit'
import { cutCheck, type Against, type CutCheckRow, type CutParts } from '@/lib/core/straightness/cut-check'
import type { PlaneFit } from '@/lib/core/straightness/plane-fit'
import { readMarks, type VendorMarks } from '@/lib/core/straightness/vendor-marks'
import { formatThou } from '@/lib/core/units/format-figure'
import { cutFactsOf } from '@/lib/dossier/cut-facts'
import type { Dossier } from '@/lib/dossier/dossier'
import { cornersOfStep } from '@/lib/dossier/measured-cut'
import { degrees as radToDeg } from '@/lib/core/units/degrees'

export type CutRow = {
  readonly id: string
  readonly part: string
  readonly wanted: string
  readonly marked: string
  readonly measured: string
  /** Against the plan, then against the marks: in words, never by colour alone. */
  readonly differences: readonly { readonly words: string; readonly within: boolean }[]
}

/** What a cut really took, beside the plan and its maker's marks. */
export type CutAtStep = {
  readonly title: string
  readonly rows: readonly CutRow[]
  readonly hasMarks: boolean
  /** Marks that could not be read as figures, as they stand; '' otherwise. */
  readonly marksAsTyped: string
  /** What is out and what to do; '' when all is within. */
  readonly out: string
  /** Where it can be rejected: the order that brought it; null at other steps. */
  readonly orderId: string | null
}

type Measured = Pick<PlaneFit, 'flatIn' | 'angleIn'> & Partial<PlaneFit>

/** The cut of one step, once it has been measured there; null before, and at steps that measure none. */
export function cutAtStep(found: Dossier, step: RouteStep, record: PlanRecord): CutAtStep | null {
  const { settings } = found
  const measured = measuredAt(found, step)
  if (!measured) return null
  const widthIn = found.casting.milledWidthIn ?? null
  const wanted = wantedAt(found, step, record)
  const marks = step.stepId === 'arrival-figures' ? marksOf(found, step) : noMarks
  const rows = cutCheck({
    measured: measured.cut,
    wanted: {
      ...wanted,
      angleDeg: wanted.angleIn === null || widthIn === null ? null : degrees(wanted.angleIn, widthIn),
    },
    marks: marks.read,
    toleranceIn: settings.cutToleranceIn,
    milledWidthIn: widthIn,
  })
  const shown = rows.map((row) => rowOf(row, record.deepEdge))
  return {
    title: `The cut, ${measured.how}`,
    rows: shown,
    hasMarks: marks.read !== null,
    marksAsTyped: marks.read === null ? marks.text : '',
    out: outWords(shown, measured.cut, marks.read, record, settings),
    orderId: step.orderId,
  }
}

const degrees = (angleIn: number, widthIn: number): number => radToDeg(Math.atan(angleIn / widthIn))

function measuredAt(
  found: Dossier,
  { stepId, orderId }: RouteStep,
): { readonly cut: Measured; readonly how: string } | null {
  if (stepId !== 'arrival-figures' && stepId !== 'finished' && stepId !== 'angle-cut') return null
  const facts = cutFactsOf(found)
  const { deck, readings } = facts
  if (stepId !== 'angle-cut') {
    const fit = cornersFit(deck, cornersOfStep(readings, 'thickness'), cornersOfStep(readings, stepId, orderId))
    if (fit.ok) return { cut: fit.value, how: 'by the corners' }
    if (stepId === 'arrival-figures') return null
  }
  const own = {
    ...facts,
    readings: stepId === 'angle-cut' ? readings.filter((reading) => reading.step.stepId === stepId) : readings,
  }
  const edges = shopCutOf(own)?.edges
  if (!edges) return null
  const angleIn = edges.deepIn - edges.shallowIn
  const angleDeg = deck.milledWidthIn ? { angleDeg: degrees(angleIn, deck.milledWidthIn) } : {}
  return { cut: { flatIn: edges.shallowIn, angleIn, ...angleDeg }, how: 'as read at the machine' }
}

/** On arrival what the order asked for; in the end the plan's own parts, with what this head departs from. */
function wantedAt(
  { facts }: Dossier,
  { stepId, orderId }: RouteStep,
  { kind }: PlanRecord,
): Pick<CutParts, 'flatIn' | 'angleIn'> {
  const order = facts.orders.find((candidate) => candidate.orderId === orderId)
  if (stepId === 'arrival-figures') return { flatIn: order?.flatIn ?? null, angleIn: order?.angleIn ?? null }
  // A clean-up wants as little as makes it flat: no figure can be off it.
  if (kind === 'clean-up' || !facts.plan) return { flatIn: null, angleIn: 0 }
  return { flatIn: stepId === 'angle-cut' ? 0 : facts.plan.flatIn, angleIn: facts.plan.angleIn }
}

type Marks = { readonly read: VendorMarks | null; readonly text: string }
const noMarks: Marks = { read: null, text: '' }

/** What we read the marks to mean; else the marks as they stand on the head. */
function marksOf({ visit, facts }: Dossier, { orderId }: RouteStep): Marks {
  const line = visit.outside.find((entry) => entry.orderId === orderId)
  const noted = facts.readings.findLast(
    (reading) => reading.kind === 'vendor-marks' && reading.step.orderId === orderId,
  )
  const said = [line?.marksRead, line?.marksTyped, noted?.text].map((text) => (text ?? '').trim())
  const texts = said.filter((text) => text !== '' && text.toLowerCase() !== 'none')
  for (const text of texts) {
    const read = readMarks(text)
    if (read.ok) return { read: read.value, text }
  }
  return { read: null, text: texts[0] ?? '' }
}

const deg = (value: number): string => `${value.toFixed(2)}°`

function rowOf(row: CutCheckRow, deepEdge: string): CutRow {
  const say = row.part === 'degrees' ? deg : formatThou
  const differences = [
    row.wanted ? { words: offWords(row, row.wanted), within: row.wanted.within } : null,
    row.marked ? { words: `mark: ${offWords(row, row.marked)}`, within: row.marked.within } : null,
  ].filter((one) => one !== null)
  return {
    id: row.part,
    part: partWords(row, deepEdge),
    wanted: row.wanted && row.part !== 'worst' && row.part !== 'taper' ? say(row.wanted.value) : '',
    marked: row.marked ? say(row.marked.value) : '',
    // Which way it lies is said beside it.
    measured: say(row.part === 'taper' || row.part === 'worst' ? Math.abs(row.measured) : row.measured),
    differences,
  }
}

function partWords({ part, point, measured }: CutCheckRow, deepEdge: string): string {
  switch (part) {
    case 'flat':
      return 'Flat part'
    case 'angle':
      return `Angle part, ${deepEdge} edge`
    case 'degrees':
      return 'Degrees'
    case 'taper':
      return 'Taper, end 1 to end 2'
    case 'worst':
      return formatThou(measured) === '0 thou' ? 'Off one plane' : `Farthest off the plane: ${pointLabel(point)}`
  }
}

/** The difference of the two figures as they stand beside each other; whether it is within is judged unrounded. */
function offWords({ part, measured }: CutCheckRow, { value, within }: Against): string {
  const verdict = within ? 'within' : 'out of tolerance'
  const shown = (figure: number) =>
    part === 'degrees' ? Number(figure.toFixed(2)) : Number((figure * 1000).toFixed(1))
  const off = shown(measured) - shown(value)
  const size = part === 'degrees' ? deg(Math.abs(off)) : `${Number(Math.abs(off).toFixed(1))} thou`
  if (size === '0 thou' || size === '0.00°') return `none, ${verdict}`
  if (part === 'taper') return `${size} deeper at end ${off > 0 ? 2 : 1}, ${verdict}`
  const [more, less] = part === 'degrees' ? ['more', 'less'] : ['too deep', 'short']
  return `${size} ${off > 0 ? more : less}, ${verdict}`
}

function outWords(
  rows: readonly CutRow[],
  cut: Measured,
  marks: VendorMarks | null,
  { deepEdge }: PlanRecord,
  settings: ShopSettings,
): string {
  const other = deepEdge === 'exhaust' ? 'intake' : 'exhaust'
  const wrongEdge = cut.angleIn < -settings.cutToleranceIn
  const parts = rows
    .filter((row) => row.differences.some((difference) => !difference.within))
    .map((row) => row.part.toLowerCase())
  const said = [
    wrongEdge ? `It is deep at the ${other} edge; the plan wants the ${deepEdge} edge.` : '',
    marks?.edge === other ? `The marks name the ${other} edge; the plan is deep at the ${deepEdge} edge.` : '',
    parts.length > 0 ? `Out of tolerance: ${parts.join('; ')}.` : '',
  ].filter((sentence) => sentence !== '')
  return said.length === 0 ? '' : `${said.join(' ')} Gauge it again; if it stands, hold this head and fetch the owner.`
}
