import { checkCutAt, marksFound, type CheckedCut } from '@/lib/core/at-mill/cut-at-step'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { pointLabel } from '@/lib/core/readings/points'
import type { RouteStep } from '@/lib/core/route/types'
import type { Against, CutCheckRow } from '@/lib/core/straightness/cut-check'
import { marksInOneWay, type VendorMarks } from '@/lib/core/straightness/vendor-marks'
import { formatThou } from '@/lib/core/units/format-figure'
import { cutFactsOf } from '@/lib/dossier/cut-facts'
import type { Dossier } from '@/lib/dossier/dossier'
import { markTexts } from '@/lib/dossier/vendor-marks'
import { leanShiftWords } from '@/lib/words/corner-inset'
import { readingAgainstText } from '@/lib/words/vendor-marks'

export type CutRow = {
  readonly id: string
  readonly part: string
  readonly wanted: string
  readonly marked: string
  readonly measured: string
  /** Against the plan, then against the marks: in words, never by colour alone. */
  readonly differences: readonly { readonly words: string; readonly within: boolean }[]
}

/** One way to read the marks, with what the corners say, and whether somebody said that it was meant so. */
export type MarksWay = { readonly words: string; readonly isMeant: boolean }

/** What a cut really took, beside the plan and its maker's marks. */
export type CutAtStep = {
  readonly title: string
  readonly rows: readonly CutRow[]
  readonly hasMarks: boolean
  /** Marks that could not be read as figures, as they stand; '' otherwise. */
  readonly marksAsTyped: string
  /** Marks that can be read in two ways: as they stand, and each way with what the corners say; null otherwise. */
  readonly marksTwoWays: {
    readonly typed: string
    /** "20.5 thou flat, 62.8 thou angle part" */
    readonly corners: string
    readonly ways: readonly MarksWay[]
  } | null
  /** What is out; '' when all is within. */
  readonly out: string
  /** What stands beside the figures: the shift on a head that leaned before; '' for nothing. */
  readonly note: string
  /** Where it can be rejected: the order that brought it; null at other steps. */
  readonly orderId: string | null
}

/** The cut of one step, once it has been measured there; null before, and at steps that measure none. */
export function cutAtStep(found: Dossier, step: RouteStep, record: PlanRecord): CutAtStep | null {
  const marks = marksFound(step.stepId === 'arrival-figures' ? markTexts(found, step) : [])
  const checked = checkCutAt(cutFactsOf(found), step, {
    wanted: { ...found.facts, kind: record.kind, milledWidthIn: found.casting.milledWidthIn ?? null },
    deepEdge: record.deepEdge,
    marks: marks.read,
    readings: marks.readings,
    toleranceIn: found.settings.cutToleranceIn,
  })
  if (!checked) return null
  const byCc = step.stepId === 'finished' && record.targetCc !== null
  const rows = checked.rows.map((row) => rowOf(row, record.deepEdge, byCc))
  return {
    title: `The cut, ${checked.by === 'corners' ? 'by the corners' : 'as read at the machine'}`,
    rows,
    hasMarks: marks.read !== null,
    marksAsTyped: marks.readings.length === 0 ? marks.text : '',
    marksTwoWays: waysOf(found, step, marks.read, checked),
    out: outWords(rows, checked, record),
    note: leanShiftWords(checked.leanShiftIn),
    orderId: step.orderId,
  }
}

/** What stands on the head, where it can be read in two ways; `meant`: what they are taken for, null: nothing yet. */
function waysOf(
  found: Dossier,
  step: RouteStep,
  meant: VendorMarks | null,
  { measured }: CheckedCut,
): CutAtStep['marksTwoWays'] {
  if (step.stepId !== 'arrival-figures') return null
  const { text, readings } = marksFound(markTexts(found, step).slice(1))
  if (readings.length < 2) return null
  return {
    typed: text,
    corners: `${formatThou(measured.flatIn)} flat, ${formatThou(measured.angleIn)} angle part`,
    ways: readings.map((way) => ({
      words: readingAgainstText(way, measured, found.settings.cutToleranceIn),
      isMeant: meant !== null && marksInOneWay(way) === marksInOneWay(meant),
    })),
  }
}

const deg = (value: number): string => `${value.toFixed(2)}°`

/** `byCc`: the chambers are cut to a volume, so the depth is information. */
function rowOf(row: CutCheckRow, deepEdge: string, byCc: boolean): CutRow {
  const say = row.part === 'degrees' ? deg : formatThou
  const differences = [
    row.wanted && byCc && row.part === 'flat' ? { words: planWords(row, row.wanted), within: true } : null,
    row.wanted && !(byCc && row.part === 'flat')
      ? { words: offWords(row, row.wanted), within: row.wanted.within }
      : null,
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
      return formatThou(measured) === '0 thou'
        ? 'Corners out of flat'
        : `Worst corner out of flat: ${pointLabel(point)}`
  }
}

/** Of a cut to a volume: how far its depth is from the plan's, judged by nothing. */
function planWords({ measured }: CutCheckRow, { value }: Against): string {
  const offThou = Number((measured * 1000).toFixed(1)) - Number((value * 1000).toFixed(1))
  const size = `${Number(Math.abs(offThou).toFixed(1))} thou`
  return size === '0 thou' ? 'as planned' : `${size} ${offThou > 0 ? 'deeper' : 'less'} than planned; the cc decides`
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

function outWords(rows: readonly CutRow[], checked: CheckedCut, { deepEdge }: PlanRecord): string {
  const other = deepEdge === 'exhaust' ? 'intake' : 'exhaust'
  const parts = rows
    .filter((row) => row.differences.some((difference) => !difference.within))
    .map((row) => row.part.toLowerCase())
  const said = [
    checked.deepAtOtherEdge ? `The cut is deep at the ${other} edge. The plan says the ${deepEdge} edge.` : '',
    checked.marksOtherEdge ? `The marks say the ${other} edge. The plan says the ${deepEdge} edge.` : '',
    parts.length > 0 ? `Out of tolerance: ${parts.join('; ')}.` : '',
  ].filter((sentence) => sentence !== '')
  return said.join(' ')
}
