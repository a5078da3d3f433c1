import type { Point } from '@/lib/drawing/marks'
import { drawWords, type Canvas, type TextStyle } from './canvas'
import type { Line } from './columns'
import { wordsWidth } from './fonts'
import type { JobSheetOwed, JobSheetPoint, JobSheetStep } from './job-sheet-data'
import { valveLines } from './job-sheet-valves'
import { wrap } from './wrap'
import { writtenRule } from './written-rule'

const boxMm = 3.3
const boxLineMm = 0.28
const choiceLineMm = 0.21
/** Of the tick in a box. */
const penMm = 0.49
/** Where the step's words begin: after the box and its number. */
const indentMm = 8.4
const stepMm = 3.1
const stepLineMm = 4.3
const noteMm = 2.6
const wantedMm = 2.8

/** States that the empty or ticked box says already. */
const quiet: ReadonlySet<JobSheetStep['state']> = new Set(['to do', 'ready', 'done'])

/**
 * A step to be ticked by hand: box, number as on the scale, words, station, and a blank for each reading it owes. What is
 * short stands on the same line.
 */
export function stepLines(step: JobSheetStep, number: number, widthMm: number): Line[] {
  const name = quiet.has(step.state) ? step.label : `${step.label} (${step.state})`
  const notes = [step.outside, step.note].filter((words) => words !== '').join('; ')
  const room = widthMm - indentMm - wordsWidth(step.station, 'text') * noteMm - 3
  const [first = '', ...more] = wrap(name, 'text-bold', stepMm, room)
  const afterMm = wordsWidth(first, 'text-bold') * stepMm + 2
  const owed = owedRows(step, widthMm - indentMm)
  const fits = (lengthMm: number) => more.length === 0 && afterMm + lengthMm <= room
  const noteBeside = notes !== '' && fits(wordsWidth(notes, 'text') * noteMm)
  const [only, ...others] = owed
  const rowBeside =
    notes === '' && step.wanted === '' && !step.valves && only && others.length === 0 && fits(widthOf(only))
      ? only
      : null
  const heightMm = rowBeside?.some(({ blank }) => blank) ? blankLineMm : stepLineMm
  const small = { face: 'text', sizeMm: noteMm } as const
  return [
    {
      heightMm,
      draw: (canvas, x, y) => {
        const baseline = y + heightMm - 1.1
        box(canvas, x, baseline - boxMm + 0.3, step.state)
        const figure = { face: 'figure', sizeMm: stepMm, anchor: 'end' } as const
        drawWords(canvas, String(number), x + indentMm - 1.2, baseline, figure)
        drawWords(canvas, first, x + indentMm, baseline, { face: 'text-bold', sizeMm: stepMm })
        if (noteBeside) drawWords(canvas, notes, x + indentMm + afterMm, baseline, small)
        if (rowBeside) drawRow(canvas, rowBeside, x + indentMm + afterMm, baseline)
        drawWords(canvas, step.station, x + widthMm, baseline, { ...small, anchor: 'end' })
      },
    },
    ...more.map((words) => wordsLine(words, { face: 'text-bold', sizeMm: stepMm })),
    ...(noteBeside || notes === '' ? [] : wrap(notes, 'text', noteMm, widthMm - indentMm)).map((words) =>
      wordsLine(words, small),
    ),
    ...(step.wanted === '' ? [] : wrap(step.wanted, 'text-bold', wantedMm, widthMm - indentMm)).map((words) =>
      wordsLine(words, { face: 'text-bold', sizeMm: wantedMm }),
    ),
    ...(step.valves ? valveLines(step.valves, indentMm, widthMm) : []),
    ...(rowBeside ? [] : owed).map(rowLine),
  ]
}

const wordsLine = (words: string, style: TextStyle): Line => ({
  heightMm: style.sizeMm * 1.25,
  draw: (canvas, x, y) => drawWords(canvas, words, x + indentMm, y + style.sizeMm * 0.95, style),
})

function box({ page }: Canvas, xMm: number, yMm: number, state: JobSheetStep['state']): void {
  const at = (x: number, y: number): Point => [xMm + x, yMm + y]
  page.box({ at: at(0, 0), widthMm: boxMm, heightMm: boxMm, lineMm: boxLineMm })
  if (state === 'done') {
    page.line(at(0.7, 1.7), at(1.5, 2.7), 'ink', penMm)
    page.line(at(1.5, 2.7), at(3.4, -0.2), 'ink', penMm)
  }
  if (state === 'waived') page.line(at(0.6, boxMm / 2), at(2.8, boxMm / 2), 'ink', penMm)
}

/** Room to write a figure, or words, by hand. */
const figureRuleMm = 10.5
const wordsRuleMm = 26
const leastWordsMm = 22
const blankLineMm = 4.9
const printedLineMm = 3.4
const owedMm = 2.7
const readMm = 3.1
const choiceMm = 2.5

type Piece = {
  readonly widthMm: number
  /** It is written on by hand, and needs room above it. */
  readonly blank: boolean
  /** Stays on one line with the others of its reading, where they all fit on one. */
  readonly kept?: boolean
  readonly draw: (canvas: Canvas, xMm: number, baselineMm: number) => void
}

/** "Finished, cc:  1 ____ 2 ____": as many to a line as fit; what was read already stands in its place. */
const owedRows = (step: JobSheetStep, room: number): Piece[][] =>
  rows(
    step.owes.map((owed) => pieces(owed, owed.label === step.label, room)),
    room,
  )

function rowLine(row: readonly Piece[]): Line {
  const heightMm = row.some(({ blank }) => blank) ? blankLineMm : printedLineMm
  return {
    heightMm,
    draw: (canvas, x, y) => drawRow(canvas, row, x + indentMm, y + heightMm - 0.8),
  }
}

function drawRow(canvas: Canvas, row: readonly Piece[], xMm: number, baselineMm: number): void {
  row.reduce((at, piece) => {
    piece.draw(canvas, at, baselineMm)
    return at + piece.widthMm
  }, xMm)
}

const widthOf = (row: readonly Piece[]): number => row.reduce((sum, { widthMm }) => sum + widthMm, 0)

/** Answers to choose from are printed where they fit on one line; otherwise the answer is written. */
function pieces({ label, unit, points, choices }: JobSheetOwed, named: boolean, room: number): Piece[] {
  const name = [named ? '' : label, unit].filter((part) => part !== '').join(', ')
  const title = name === '' ? [] : wordPieces(`${name}:`, asked, room)
  if (points.some(({ value }) => value === null) && choices.length > 0) {
    const offered = [...title, ...choices.map(choicePiece)]
    if (widthOf(offered) <= room) return offered
  }
  const ruleMm = unit === '' ? Math.max(leastWordsMm, Math.min(wordsRuleMm, room - widthOf(title) - 2)) : figureRuleMm
  let group = ''
  return [
    ...title,
    ...points.flatMap((point) => {
      const [first, ...more] = answer(point, ruleMm, room)
      if (!first || point.group === group) return [first, ...more].filter((piece) => piece !== undefined)
      group = point.group
      return [...inOne([...wordPieces(group, asked, room), first], room), ...more]
    }),
  ]
}

const inOne = (parts: readonly Piece[], room: number): readonly Piece[] =>
  widthOf(parts) > room
    ? parts
    : [
        {
          widthMm: widthOf(parts),
          blank: parts.some(({ blank }) => blank),
          draw: (canvas, x, baseline) => drawRow(canvas, parts, x, baseline),
        },
      ]

const asked = { face: 'text', sizeMm: owedMm } as const
const pointed = { face: 'text-bold', sizeMm: owedMm } as const
const read = { face: 'figure-bold', sizeMm: readMm } as const
const blankMm = 1.5

/** Words as one piece; word by word where they are too long to be kept together. */
function wordPieces(words: string, style: TextStyle, room: number): Piece[] {
  const lengthMm = (part: string) => wordsWidth(part, style.face) * style.sizeMm
  const long = lengthMm(words) > room / 2
  const parts = long ? words.split(/\s+/u).flatMap((word) => wrap(word, style.face, style.sizeMm, room)) : [words]
  return parts
    .filter((part) => part !== '')
    .map((part, i) => ({
      widthMm: lengthMm(part) + (i < parts.length - 1 ? 0.9 : blankMm),
      blank: false,
      draw: (canvas, x, baseline) => drawWords(canvas, part, x, baseline, style),
    }))
}

function choicePiece(words: string): Piece {
  return {
    widthMm: wordsWidth(words, 'text') * owedMm + choiceMm + 2.8,
    blank: false,
    kept: true,
    draw: (canvas, x, baseline) => {
      const at: Point = [x, baseline + 0.3 - choiceMm]
      canvas.page.box({ at, widthMm: choiceMm, heightMm: choiceMm, lineMm: choiceLineMm })
      drawWords(canvas, words, x + choiceMm + 0.8, baseline, { face: 'text', sizeMm: owedMm })
    },
  }
}

/** An answer that was given, or a rule to write it on, behind the name of its point. */
function answer({ label, value }: JobSheetPoint, ruleMm: number, room: number): readonly Piece[] {
  const [first, ...more] = value === null ? [rulePiece(ruleMm)] : wordPieces(value, read, room)
  const name = wordPieces(label, pointed, room).map((piece) => ({ ...piece, widthMm: piece.widthMm - 0.7 }))
  return first ? [...inOne([...name, first], room), ...more] : name
}

const rulePiece = (lengthMm: number): Piece => ({
  widthMm: lengthMm + 2,
  blank: true,
  draw: (canvas, x, baseline) => writtenRule(canvas, x, lengthMm, baseline),
})

/** One owed reading after the other; what is to be written begins on the same line when all of it fits there. */
function rows(owed: readonly (readonly Piece[])[], room: number): Piece[][] {
  const made: Piece[][] = []
  let used = Infinity
  for (const pieces of owed) {
    if (pieces.some(({ blank, kept }) => blank || kept) && used + widthOf(pieces) - 2 > room) used = Infinity
    for (const piece of pieces) {
      if (used + piece.widthMm - 2 > room) {
        made.push([])
        used = 0
      }
      made.at(-1)?.push(piece)
      used += piece.widthMm
    }
  }
  return made
}
