import type { SpecValves } from '@/lib/core/spec/spec-sheet'
import { heading, paragraph, type Paper } from './layout'
import { table, tableHeight, type Column } from './table'

const sizeMm = 2.7
const headingMm = 10
/** Of three lines: "Retainer to seal, in". */
const headMm = 7

/** A row a valve, a column a figure, what is wanted over them in bold. */
export function specValves(paper: Paper, valves: SpecValves): void {
  heading(paper, 'Valves')
  const rows = rowsOf(valves)
  const boldRows = new Set(valves.wanted.map((_, at) => at))
  table(paper, columnsOf(valves), rows, { sizeMm, boldRows })
  paragraph(paper, valves.note, { sizeMm })
}

/** How high it would be, between edges so far apart. */
export const valvesMm = (valves: SpecValves | undefined, widthMm: number): number =>
  valves ? headingMm + headMm + tableHeight(columnsOf(valves), rowsOf(valves), widthMm, sizeMm) : 0

const rowsOf = ({ wanted, rows }: SpecValves): string[][] =>
  [...wanted, ...rows].map(({ name, cells }) => [name, ...cells])

const columnsOf = ({ columns }: SpecValves): Column[] => [
  { label: 'valve', share: 1.6 },
  ...columns.map(({ label, unit }): Column => ({ label: `${label}, ${unit}`, share: 1 })),
]
