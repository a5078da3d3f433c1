import { causeWords } from './do-again'
import type { StepRef } from './keys'
import { ownConditionWords } from './own-conditions'
import { noRules, type RouteRules, type StepChange } from './rules'
import type { Cells } from './cells'
import { stationLabels } from './stations'
import { tableOf, type ShopRow, type StepTable } from './table'
import { stations, type Station } from './step-ids'
import { listed, lower, readingNoun } from './words'

/** What this shop calls a station. */
export const stationName = (station: Station, { stationNames }: RouteRules = noRules): string =>
  stationNames[station] ?? stationLabels[station]

/** All of them. */
export const stationNamesOf = (rules: RouteRules): Readonly<Record<Station, string>> => ({
  ...stationLabels,
  ...rules.stationNames,
})

/** What the four columns of the step table are called. */
export const columnNames = ['no cut', 'clean-up', 'flat cut', 'angle cut'] as const
export const cellWords = {
  '●': 'always',
  '○': 'when ordered',
  '◐': 'conditional',
  '–': 'never',
} as const

/** "always"; "clean-up, flat cut: always; no cut: when ordered". */
export function cellsWords(cells: Cells): string {
  const said = [...new Set(cells)].map((cell) => {
    const where = columnNames.filter((_, place) => cells[place] === cell)
    return where.length === columnNames.length ? cellWords[cell] : `${where.join(', ')}: ${cellWords[cell]}`
  })
  return said.join('; ')
}

/** What changed between two versions of the tables, a line each. Example: "Crack check is now called Dye and lamp". */
export function rulesChanges(before: RouteRules, after: RouteRules): string[] {
  const [was, is] = [tableOf(before), tableOf(after)]
  return [
    ...stations.flatMap((station) => renamed(stationName(station, before), stationName(station, after))),
    ...is.rows.flatMap((row) => stepChanges(row, was.rowOf(row.ref), { before, after, was, is })),
  ]
}

type Both = {
  readonly before: RouteRules
  readonly after: RouteRules
  readonly was: StepTable
  readonly is: StepTable
}

const renamed = (from: string, to: string): string[] => (from === to ? [] : [`${from} is now called ${to}`])

function stepChanges(row: ShopRow, old: ShopRow | undefined, both: Both): string[] {
  if (!old)
    return [`${row.label} was added, at ${lower(stationName(row.station, both.after))}: ${cellsWords(row.cells)}`]
  const { label } = row
  const [from, to] = [askedOf(row.ref, both.before), askedOf(row.ref, both.after)]
  if (row.own?.retired && !old.own?.retired) return [`${label} is no longer used on new routes`]
  return [
    ...(old.own?.retired && !row.own?.retired ? [`${label} is used again`] : []),
    ...renamed(old.label, label),
    ...differs(
      `${label}: at`,
      stationName(old.station, both.before),
      stationName(row.station, both.after),
      old.station !== row.station,
    ),
    ...differs(`${label}:`, cellsWords(old.cells), cellsWords(row.cells)),
    ...differs(`${label}: its condition`, conditionWords(old), conditionWords(row)),
    ...differs(`${label}: waits for`, stepNames(from.waitsFor, both.was), stepNames(to.waitsFor, both.is)),
    ...differs(`${label}: done again after`, causeNames(from.undoneBy), causeNames(to.undoneBy)),
    ...differs(`${label}: owes`, owesWords(old), owesWords(row)),
    ...differs(`${label}: makes chips`, old.own?.machining ? 'yes' : 'no', row.own?.machining ? 'yes' : 'no'),
    ...differs(`${label}: stands after`, placeWords(old, both.was), placeWords(row, both.is)),
  ]
}

const differs = (what: string, from: string, to: string, really = from !== to): string[] =>
  really ? [`${what} ${to}, was ${from}`] : []

/** What the shop itself asks of a step in order and "do again". */
export const askedOf = (
  ref: StepRef,
  { changed, own }: RouteRules,
): Required<Pick<StepChange, 'waitsFor' | 'undoneBy'>> => {
  const { waitsFor = [], undoneBy = [] } = own.find(({ id }) => id === ref) ?? changed[ref] ?? {}
  return { waitsFor, undoneBy }
}

const orNothing = (words: readonly string[]): string => (words.length === 0 ? 'nothing' : listed(words))
const stepNames = (refs: readonly StepRef[], table: StepTable): string =>
  orNothing(refs.map((ref) => lower(table.rowOf(ref)?.label ?? ref)))
const causeNames = (causes: Required<StepChange>['undoneBy']): string =>
  orNothing(causes.map((cause) => causeWords[cause]))
const owesWords = ({ own }: ShopRow): string => orNothing((own?.owes ?? []).map(readingNoun))
const conditionWords = ({ own }: ShopRow): string =>
  own && own.when !== '' ? ownConditionWords(own.when, own.limitIn) : 'nothing'
const placeWords = ({ own }: ShopRow, table: StepTable): string => (own ? lower(table.rowOf(own.after).label) : '')
