import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import { cutInWords } from './head-plan'
import { filled, linePath, outlined, polygonPath, stroked, text, type Drawing, type Mark, type Point } from './marks'

const left = 4
const right = 56
const top = 1
const deck = 21.5
/** Depths are drawn far larger than they are, or nobody would see them. */
const deepMm = 7
const flatMm = 2.5

/**
 * Section across the head from intake to exhaust, deck down: what comes off is solid, deepest at the deep edge. The
 * depths are exaggerated and the drawing says so.
 */
export function headSection(head: HeadDrawing): Drawing {
  const flat = head.cutKind === 'flat' || head.cutKind === 'angle-flat' || head.cutKind === 'clean-up' ? flatMm : 0
  const rise = (edge: 'intake' | 'exhaust') => flat + (head.deepEdge === edge ? deepMm : 0)
  const [intakeY, exhaustY] = [deck - rise('intake'), deck - rise('exhaust')]
  return {
    widthMm: 60,
    heightMm: 30,
    title: 'Section across the head',
    description: `${cutInWords(head)} Depths are drawn larger than they are.`,
    marks: [
      ...outlined(body(), 'ink', 0.5),
      ...filled(
        polygonPath([
          [left, deck],
          [left, intakeY],
          [right, exhaustY],
          [right, deck],
        ]),
        head.cutKind === 'none' ? 'ground' : 'ink',
      ),
      ...stroked(linePath([left, deck], [right, deck]), 'ink', 0.5),
      ...words(head),
    ],
  }
}

function body(): string {
  const corners: readonly Point[] = [
    [left, deck],
    [left, top + 6],
    [left + 9, top],
    [right - 7, top],
    [right, top + 8],
    [right, deck],
  ]
  return polygonPath(corners)
}

/** The edges are named inside the body, their depths stand under them. */
function words(head: HeadDrawing): Mark[] {
  const { intake, exhaust } = head.edgeDepths
  const nameY = deck - flatMm - deepMm - 1.4
  return [
    ...text([left + 1.6, nameY], 'intake', 3.4),
    ...text([right - 1.6, nameY], 'exhaust', 3.4, { anchor: 'end' }),
    ...text([left, deck + 4.4], intake ?? '', 4, { bold: true }),
    ...text([right, deck + 4.4], exhaust ?? '', 4, { anchor: 'end', bold: true }),
    ...text([(left + right) / 2, deck + 7.9], 'deck; depths drawn larger than they are', 2.9, {
      anchor: 'middle',
    }),
  ]
}
