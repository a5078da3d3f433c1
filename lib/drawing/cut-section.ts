import { formatFigure, formatThou } from '@/lib/core/units/format-figure'
import { bodyMarks, breakMarks, chamberLines, newDeckAt, quenchPad } from './cut-section-body'
import { frameOf, narrowLook, wideLook, type CutSectionLook, type Frame } from './cut-section-frame'
import { sectionGeometry } from './cut-section-geometry'
import { depthFactor, firstKeyMm, keyRows, stripMarks } from './cut-section-strip'
import type { CutSectionInput, SectionGeometry } from './cut-section-types'
import { portMarks, seatMarks, valveMarks, valveNames } from './cut-section-valves'
import { degrees, isCut, notes, noWidthWords, sectionInWords, wrapped } from './cut-section-words'
import { arrowhead, gapDimension, levelDimension } from './dimension'
import { filled, linePath, stroked, text, type Drawing, type Mark, type Point } from './marks'

export { sectionGeometry } from './cut-section-geometry'
export type { CutSectionInput, SectionGeometry } from './cut-section-types'

/**
 * Section across a head and the cut of its deck, to one scale across and up, deck down, the intake edge on the left; under
 * it the deck alone with its depths drawn larger by a round factor that stands beside it.
 *
 * Its height depends on the casting alone, so that nothing moves about while a cut is being chosen.
 */
export function cutSection(input: CutSectionInput): Drawing {
  const geometry = sectionGeometry(input)
  const look = lookOf(input)
  const frame = frameOf(geometry, input.deepEdge, look)
  const rows = rowsOf(geometry, frame)
  const front = geometry.oneBehindOther ? geometry.valves.slice(0, 1) : geometry.valves
  return {
    widthMm: look.widthMm,
    heightMm: rows.heightMm,
    title: 'Section across the head, to scale',
    description: sectionInWords(geometry, input),
    marks: [
      ...bodyMarks(geometry, frame, input),
      ...quenchPad(geometry, frame, input),
      ...front.flatMap((valve) => portMarks(valve, geometry, frame)),
      ...chamberLines(geometry.chamber, frame),
      ...breakMarks(frame, input),
      ...front.flatMap((valve) => valveMarks(valve, geometry, frame)),
      ...geometry.valves
        .filter((valve) => !front.includes(valve))
        .flatMap((valve) => valveMarks(valve, geometry, frame)),
      ...geometry.valves.flatMap((valve) => seatMarks(valve, frame)),
      ...valveNames(geometry, frame),
      ...edges(geometry, frame, input),
      ...angleMark(geometry, frame),
      ...widthMarks(geometry, frame, rows),
      ...text([1, rows.captionY], captionOf(geometry, frame), look.textMm, { bold: true }),
      ...stripMarks(geometry, frame, rows.stripY),
      ...rows.notes.flatMap((words, at) => text([rows.notesX, rows.notesY + at * look.rowMm], words, look.smallMm)),
    ],
  }
}

function lookOf({ narrow = false, widthMm }: CutSectionInput): CutSectionLook {
  const look = narrow ? narrowLook : wideLook
  return { ...look, widthMm: Math.max(60, widthMm ?? look.widthMm) }
}

type Rows = {
  readonly widthY: number
  readonly captionY: number
  readonly stripY: number
  readonly notesX: number
  readonly notesY: number
  readonly heightMm: number
  readonly notes: readonly string[]
}

const tailMm = 4

/** Heights on the sheet of all that stands under the section. */
function rowsOf(geometry: SectionGeometry, { deckY, look }: Frame): Rows {
  const widthY = deckY + tailMm + look.figureMm + 2 * look.rowMm + 4
  const captionY = widthY + look.rowMm + 3.5
  const stripY = captionY + 3
  const keys = keyRows(geometry)
  const keysY = stripY + look.stripMm + (keys > 0 ? firstKeyMm : look.rowMm + 1)
  const keysEndY = keysY + look.rowMm * keys
  const beside = look.notesBeside && keys > 0
  const notesX = beside ? look.widthMm / 2 : 1
  const lines = notes(geometry).flatMap((note) => wrapped(note, look.widthMm - notesX - 1, look.smallMm))
  const notesY = beside || keys === 0 ? keysY : keysEndY + 1.5
  const heightMm = Math.max(keysEndY, notesY + lines.length * look.rowMm) - look.rowMm + 2
  return { widthY, captionY, stripY, notesX, notesY, heightMm, notes: lines }
}

/** Both edges by name, and how deep the cut is there. */
function edges(
  geometry: SectionGeometry,
  { leftX, rightX, deckY, place, look }: Frame,
  { deepEdge }: CutSectionInput,
): Mark[] {
  const { motion, depthsIn, widthIn } = geometry
  return (['intake', 'exhaust'] as const).flatMap((edge) => {
    const deep = edge === deepEdge
    const depthIn = deep ? depthsIn.deep : depthsIn.shallow
    const [out, leadX] = edge === 'intake' ? [-1, leftX] : [1, rightX]
    const newY = place(newDeckAt(geometry, deep ? widthIn : 0))[1]
    const firstY = deckY + tailMm + look.figureMm
    const nameY = isCut(motion) ? firstY + look.rowMm : firstY
    const at = edge === 'intake' ? 1 : look.widthMm - 1
    const anchor = edge === 'intake' ? 'start' : 'end'
    const named = deep && motion.slope > 0
    return [
      ...(depthIn > 0 ? gapDimension(leadX + out * 3.5, newY, deckY, leadX + out, tailMm) : []),
      ...text([at, firstY], isCut(motion) ? formatThou(depthIn) : '', look.figureMm, { anchor, bold: true }),
      ...text([at, nameY], `${edge} edge`, look.textMm, { anchor }),
      ...text([at, firstY + 2 * look.rowMm], named ? 'deep edge' : '', look.textMm, { anchor, bold: true }),
    ]
  })
}

/** The angle, led to the new deck: at true scale an arc of it could not be seen. */
function angleMark(geometry: SectionGeometry, { deckY, place, look }: Frame): Mark[] {
  if (geometry.angleDeg === null) return []
  const middle = geometry.widthIn * 0.5
  const tip: Point = place(newDeckAt(geometry, middle))
  const y = deckY + tailMm + look.figureMm
  const from: Point = [tip[0], y - look.figureMm * 0.85]
  return [
    ...stroked(linePath(from, tip), 'ink', 0.2),
    ...filled(arrowhead(tip, from), 'ink'),
    ...text([tip[0], y], degrees(geometry.angleDeg), look.figureMm, { anchor: 'middle', bold: true }),
  ]
}

function widthMarks(
  { widthIn, widthKnown }: SectionGeometry,
  { leftX, rightX, look }: Frame,
  { widthY }: Rows,
): Mark[] {
  if (!widthKnown) return text([look.widthMm / 2, widthY + 1], noWidthWords, look.smallMm, { anchor: 'middle' })
  const ends = [leftX, rightX].map((x) => linePath([x, widthY - 2], [x, widthY + 2])).join('')
  return [
    ...levelDimension(leftX, rightX, widthY, `milled width ${formatFigure(widthIn, 'milledWidth')}`, look.textMm),
    ...stroked(ends, 'ink', 0.2),
  ]
}

function captionOf(geometry: SectionGeometry, { mmPerIn }: Frame): string {
  if (geometry.refused !== null) return 'The deck alone: this cut cannot be drawn'
  if (!isCut(geometry.motion)) return 'The deck alone: no cut'
  return `The deck alone, depths drawn × ${depthFactor(geometry, mmPerIn)}`
}
