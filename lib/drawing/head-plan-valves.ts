import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import { ellipsePath, filled, outlined, text, type Mark, type Point } from './marks'

/** The deck in the drawing: intake edge at the foot, marked end at the left, in millimetres. */
export type DeckFrame = { readonly left: number; readonly top: number; readonly length: number; readonly width: number }

type FlatDeck = NonNullable<HeadDrawing['flatDeck']>
type Valve = FlatDeck['valves'][number]

/** The middle of each cylinder along the head. The ends stay clear: the marked end has its notch there. */
export function cylinderPitch(chambers: number, { left, length }: Pick<DeckFrame, 'left' | 'length'>) {
  const clear = 5
  const pitch = (length - 2 * clear) / Math.max(1, chambers)
  return { pitch, at: (i: number): number => left + clear + pitch * (i + 0.5) }
}

/** Part of a cylinder's room that its valves take along the head. */
const valvesPart = 0.72

/**
 * The valves in the face of a flat-deck head, across where the record has them; along the head the record has no place, so
 * they stand beside each other about the middle of their cylinder. The injector is a point.
 */
export function flatDeckValves(head: HeadDrawing, flatDeck: FlatDeck, frame: DeckFrame): Mark[] {
  const { pitch, at } = cylinderPitch(head.chambers, frame)
  const y = (across: number): number => frame.top + (1 - across) * frame.width
  const rows = rowsOf(flatDeck.valves)
  const drawn = flatDeck.valves.length > 0 || flatDeck.injectorAcross !== null
  const cylinders = Array.from({ length: head.chambers }, (_, i) => i)
  const circles = cylinders.flatMap((i) =>
    rows.flatMap((row) => row.map((valve, place) => valvePath([at(i), y(valve.across)], valve, row, place))),
  )
  function valvePath([x, middle]: Point, valve: Valve, row: readonly Valve[], place: number): string {
    const each = (pitch * valvesPart) / row.length
    const radius = Math.min((valve.widthShare / 2) * frame.width, each * 0.48)
    return ellipsePath([x + each * (place + 0.5 - row.length / 2), middle], radius)
  }
  const { injectorAcross } = flatDeck
  return [
    ...outlined(circles.join(''), 'ink', 0.4),
    ...(injectorAcross === null
      ? []
      : filled(cylinders.map((i) => ellipsePath([at(i), y(injectorAcross)], 0.9)).join(''), 'ink')),
    ...cylinders.flatMap((i) =>
      text([at(i), drawn ? frame.top + frame.width - 2 : frame.top + frame.width / 2], String(i + 1), drawn ? 4.6 : 7, {
        anchor: 'middle',
        bold: true,
      }),
    ),
  ]
}

/** Valves that would lie on one another if each stood in the middle: they share a row along the head. */
function rowsOf(valves: readonly Valve[]): readonly (readonly Valve[])[] {
  const rows: Valve[][] = []
  for (const valve of valves) {
    const beside = rows.find((row) =>
      row.some((other) => Math.abs(other.across - valve.across) < (other.widthShare + valve.widthShare) / 2),
    )
    if (beside) beside.push(valve)
    else rows.push([valve])
  }
  return rows
}

/** What the circles are, and what they are not. */
export const flatDeckWords = ({ flatDeck }: HeadDrawing): string =>
  flatDeck && flatDeck.valves.length > 0 ? 'valves: across by the record, along the head not to scale' : ''
