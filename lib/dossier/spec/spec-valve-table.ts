import { readingSpecs } from '@/lib/core/readings/specs'
import { ports, type Port } from '@/lib/core/readings/valves'
import type { ValveKind } from '@/lib/core/readings/valve-kinds'
import type { SpecValves } from '@/lib/core/spec/spec-sheet'
import { formatBare } from '@/lib/core/units/format-figure'
import { columnsInUse, valveName } from '@/lib/core/valve-sheet/sheet'
import { wantedLines, type WantedAt } from '@/lib/core/wanted/at-step'
import { groupOfReading } from '@/lib/core/wanted/of-reading'
import { filledWords } from '@/lib/words/valve-sheet'
import type { Dossier } from '../dossier'
import { cellText, sheetOf, unitOf } from '../valve-sheet-of'

/** More rows than this leave no room for the rest of the page: then each column is a line. */
const mostValves = 16
const filledMark = '*'

/** The figures of the valves as a table: what is wanted at each port, then a row for each valve; null: none was read, or too many. */
export function specValves(head: Dossier): SpecValves | null {
  const sheet = sheetOf(head)
  const columns = columnsInUse(sheet)
  if (columns.length === 0 || sheet.valves.length > mostValves) return null
  const anyFilled = columns.some(({ cells }) => cells.some(({ reading, filled }) => reading && filled))
  return {
    columns: columns.map(({ column: { kind, short } }) => ({ label: short, unit: unitOf(kind) || '°' })),
    wanted: ports
      .map((port) => ({
        name: `wanted, ${port}`,
        cells: columns.map(({ column }) => wantedCell(head, column.kind, port)),
      }))
      .filter(({ cells }) => cells.some((cell) => cell !== '')),
    rows: sheet.valves.map((valve, at) => ({
      name: valveName(valve, sheet.counts),
      cells: columns.map(({ column, cells }) => {
        const cell = cells[at]
        return cell?.reading ? `${cellText(column.kind, cell.reading)}${cell.filled ? filledMark : ''}` : ''
      }),
    })),
    note: anyFilled ? `${filledMark} ${filledWords}` : '',
  }
}

/** "0.0600", "0.0012 to 0.0020", "max 0.0020"; '' where nobody said. */
function wantedCell({ wanted }: Pick<Dossier, 'wanted'>, kind: ValveKind, port: Port): string {
  const group = kind === 'seat-angles' ? 'seat-angle' : groupOfReading(kind, port)
  const [line] = group === null ? [] : wantedLines([group], wanted)
  const at = line?.at.find((one) => one.port === port || one.port === null)
  return at ? endsWords(at, readingSpecs[kind].quantity ?? 'seatAngle') : ''
}

function endsWords({ about, least, most }: WantedAt, quantity: Parameters<typeof formatBare>[1]): string {
  const bare = (figure: { readonly value: number }) => formatBare(figure.value, quantity)
  if (about) return bare(about)
  if (least && most) return `${bare(least)} to ${bare(most)}`
  return most ? `max ${bare(most)}` : least ? `min ${bare(least)}` : ''
}
