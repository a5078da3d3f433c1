import { oneOfEach } from '@/lib/core/readings/valves'
import type { ValveKind } from '@/lib/core/readings/valve-kinds'
import { readingSpecs } from '@/lib/core/readings/specs'
import { quantities } from '@/lib/core/units/quantities'
import { columnsInUse, columnState, valveName, valveSheet, type ColumnState } from '@/lib/core/valve-sheet/sheet'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { Dossier } from './dossier'
import { bareText } from './reading-text'

/** The valve sheet of a head: every column, with the newest answer of each valve. */
export const sheetOf = ({ newest, facts }: Pick<Dossier, 'newest' | 'facts'>) =>
  valveSheet(newest, { chambers: facts.chambers, valves: facts.valves ?? oneOfEach })

export type SheetView = {
  readonly columns: readonly {
    readonly kind: ValveKind
    readonly label: string
    readonly unit: string
    readonly state: ColumnState
  }[]
  readonly rows: readonly {
    readonly name: string
    /** One a column; '' where nothing was given. */
    readonly cells: readonly { readonly text: string; readonly filled: boolean }[]
  }[]
}

/** The sheet as it is shown: the columns that have an answer; null when none has. */
export function sheetView(head: Pick<Dossier, 'newest' | 'facts'>): SheetView | null {
  const sheet = sheetOf(head)
  const columns = columnsInUse(sheet)
  if (columns.length === 0) return null
  return {
    columns: columns.map((one) => ({
      kind: one.column.kind,
      label: readingSpecs[one.column.kind].label,
      unit: unitOf(one.column.kind),
      state: columnState(one),
    })),
    rows: sheet.valves.map((valve, at) => ({
      name: valveName(valve, sheet.counts),
      cells: columns.map(({ column, cells }) => {
        const cell = cells[at]
        return { text: cell?.reading ? cellText(column.kind, cell.reading) : '', filled: cell?.filled ?? false }
      }),
    })),
  }
}

export function unitOf(kind: ValveKind): string {
  const { quantity } = readingSpecs[kind]
  return quantity ? quantities[quantity].unit : ''
}

/** A figure in the unit of its column, words as they are. */
export function cellText(kind: ValveKind, reading: EffectiveReading): string {
  const { value, notTaken, text } = reading
  if (notTaken !== null && notTaken !== '') return `not taken: ${notTaken}`
  return value === null ? text : bareText({ ...reading, kind, value }, unitOf(kind))
}
