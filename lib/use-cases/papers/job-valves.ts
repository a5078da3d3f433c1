import { oneOfEach, placesOf, valvePoint, valvesOf } from '@/lib/core/readings/valves'
import { isValveKind, type ValveKind } from '@/lib/core/readings/valve-kinds'
import { sameKey } from '@/lib/core/route/keys'
import type { RouteStep } from '@/lib/core/route/types'
import { columnOf } from '@/lib/core/valve-sheet/columns'
import { valveName } from '@/lib/core/valve-sheet/sheet'
import type { Dossier } from '@/lib/dossier/dossier'
import { cellText, unitOf } from '@/lib/dossier/valve-sheet-of'
import type { JobSheetValves } from '@/lib/pdf/job-sheet-data'

/** More columns than this are too narrow to write in. */
const mostColumns = 7

/** What a step reads at each valve, as a table with room to write; null: too little for one, or too much. */
export function jobValves(head: Dossier, step: RouteStep): JobSheetValves | null {
  const kinds = step.owes.map(({ kind }) => kind).filter((kind): kind is ValveKind => isValveKind(kind))
  if (kinds.length < 2 || kinds.length > mostColumns) return null
  const counts = head.facts.valves ?? oneOfEach
  const read = head.newest.filter((reading) => sameKey(reading.step, step))
  const cell = (kind: ValveKind, point: string): string | null => {
    const found = placesOf(kind, point)
      .map((place) => read.findLast((one) => one.kind === place.kind && one.point === place.point))
      .find((one) => one !== undefined)
    return found ? cellText(kind, found) : null
  }
  return {
    columns: kinds.map((kind) => ({ label: columnOf(kind).short, unit: unitOf(kind) })),
    rows: valvesOf(head.chambers, counts).map((valve) => ({
      name: valveName(valve, counts),
      cells: kinds.map((kind) => cell(kind, valvePoint(valve))),
    })),
  }
}
