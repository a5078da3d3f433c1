import type { Cell, Cells } from './cells'
import type { StepRef } from './keys'

/** From the least to the most often: a step may be asked for more often than its floor, never less. */
const rank: Readonly<Record<Cell, number>> = { '–': 0, '○': 1, '◐': 2, '●': 3 }

const floor = (text: string): Cells => [...text] as unknown as Cells

/**
 * What no setting goes under, for no cut, clean-up, flat cut and angle cut. A floor stands where leaving the step out lets
 * a wrong or dangerous head go out unseen: metal goes and nobody knows what is left; a tilted hole meets its bolt; a seat
 * is cut through; a spring binds; a piston meets a valve; chips go into an engine. Rows without a line have no floor: they
 * are work that is ordered, or the shop's own way.
 */
const floors: Readonly<Partial<Record<StepRef, Cells>>> = {
  'check-in': floor('●●●●'),
  // A seal or a weld that leaks is not seen from outside.
  pressure: floor('◐◐◐◐'),
  // What a cutter takes away cannot be measured afterwards.
  thickness: floor('–●●●'),
  chambers: floor('–◐●●'),
  'seat-before': floor('––●●'),
  'arrival-count': floor('◐◐◐◐'),
  'arrival-figures': floor('◐◐◐◐'),
  'angle-cut': floor('–––●'),
  'flat-cut': floor('–●●◐'),
  deburr: floor('–●●●'),
  rinse: floor('◐◐◐◐'),
  intake: floor('–◐◐◐'),
  // The holes lean with the deck.
  'bolt-seats': floor('–––●'),
  'bolt-fit': floor('–––●'),
  'bolt-reach': floor('–◐◐●'),
  'dowel-fit': floor('–◐◐●'),
  'seat-after': floor('–◐●●'),
  'seat-work': floor('–◐◐◐'),
  blend: floor('◐◐◐◐'),
  heights: floor('◐◐◐◐'),
  rocker: floor('–◐◐◐'),
  cam: floor('–◐◐◐'),
  finished: floor('◐◐●●'),
  ptv: floor('–◐◐●'),
  'wash-out': floor('◐●●●'),
  leak: floor('◐◐◐◐'),
  final: floor('●●●●'),
  'hand-over': floor('●●●●'),
}

const none: Cells = ['–', '–', '–', '–']

/** The floor of a step; "never" throughout where it has none. */
export const floorOf = (ref: StepRef): Cells => floors[ref] ?? none

/** Whether a cell asks for a step less often than another: "when ordered" is less than "conditional". */
export const isLess = (cell: Cell, than: Cell): boolean => rank[cell] < rank[than]

/** These cells, none of them under the step's floor. */
export function raised(ref: StepRef, cells: Cells): Cells {
  const least = floorOf(ref)
  const at = (place: 0 | 1 | 2 | 3): Cell => (isLess(cells[place], least[place]) ? least[place] : cells[place])
  return [at(0), at(1), at(2), at(3)]
}
