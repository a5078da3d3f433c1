import type { RulesFault } from './codes'
import { floorOf, isLess } from './floors'
import type { StepRef } from './keys'
import { ownConditions } from './own-conditions'
import type { OwnStep, RouteRules } from './rules'
import { columns, type Cells } from './cells'
import { isOwnStep } from './step-ids'
import { stationLabels } from './stations'
import { tableOf, type StepTable } from './table'
import { walkThrough, walks } from './walk'

/** Their cells stand: without them a head does not come in, is not cut or does not leave. */
export const fixedCells: readonly StepRef[] = [
  'check-in',
  'angle-cut',
  'arrival-count',
  'arrival-figures',
  'flat-cut',
  'rinse',
  'final',
  'hand-over',
]

/** Nothing waits for these but each other, and nothing stands after them. */
const last: readonly StepRef[] = ['final', 'hand-over']

/**
 * Whether a head can go through under these rules, whatever is to be done to it. Names must tell steps and stations
 * apart, cells must say something, nothing may wait in a circle, and a trial head of each kind of cut, new and used, with
 * everything ordered, must come to its hand over. Null: it can; otherwise the first fault that is found.
 *
 * Example: deburr waits for a step of the shop that itself waits for deburr → a circle, with both names.
 */
export function checkRules(rules: RouteRules): RulesFault | null {
  const table = tableOf(rules)
  return (
    badStations(rules) ??
    badNames(table) ??
    badCells(rules) ??
    firstOf(rules.own, (step) => badOwn(step, rules)) ??
    badWaits(rules, table) ??
    circle(table) ??
    stuck(rules)
  )
}

type Fault = RulesFault | null

function firstOf<T>(items: readonly T[], check: (item: T) => Fault): Fault {
  for (const item of items) {
    const fault = check(item)
    if (fault !== null) return fault
  }
  return null
}

const longest = 60

/** The name that stands twice, or is not one; null when all are different. */
function badName(names: readonly string[], what: 'station' | 'step'): Fault {
  const seen = new Set<string>()
  return firstOf(names, (name) => {
    const plain = name.trim().toLowerCase()
    if (plain === '') return { code: 'no-name', what }
    if (name.length > longest) return { code: 'name-too-long', name, mostLetters: longest }
    if (seen.has(plain)) return { code: 'name-twice', what, name }
    seen.add(plain)
    return null
  })
}

const badStations = ({ stationNames }: RouteRules): Fault =>
  badName(Object.values({ ...stationLabels, ...stationNames }), 'station')

const badNames = ({ rows }: StepTable): Fault =>
  badName(
    rows.filter(({ own }) => !own?.retired).map(({ label }) => label),
    'step',
  )

function badCells({ changed }: RouteRules): Fault {
  const stock = tableOf({ stationNames: {}, changed: {}, own: [] })
  return firstOf(Object.entries(changed) as [StepRef, { cells?: Cells }][], ([ref, { cells }]) => {
    const row = stock.rowOf(ref)
    if (row === undefined) return { code: 'step-not-found' }
    if (cells === undefined) return null
    const { label } = row
    if (fixedCells.includes(ref)) return { code: 'cells-fixed', label }
    return (
      underFloor(ref, label, cells) ?? (cells.includes('◐') && !row.when ? { code: 'not-conditional', label } : null)
    )
  })
}

/** The first column that asks for a step less often than a head can do without; null: none. */
function underFloor(ref: StepRef, label: string, cells: Cells): Fault {
  const least = floorOf(ref)
  const place = cells.findIndex((cell, at) => isLess(cell, least[at] ?? '–'))
  const [column, floor] = [columns[place], least[place]]
  return column === undefined || floor === undefined ? null : { code: 'under-floor', label, column, floor }
}

function badOwn(step: OwnStep, { own }: RouteRules): Fault {
  if (!isOwnStep(step.id) || own.filter(({ id }) => id === step.id).length > 1) return { code: 'added-twice' }
  const { label } = step
  const onCondition = step.cells.includes('◐')
  if (onCondition && step.when === '') return { code: 'no-condition', label }
  if (!onCondition && step.when !== '') return { code: 'no-column', label }
  const hasLimit = step.when !== '' && ownConditions[step.when].hasLimit
  if (hasLimit && (step.limitIn === null || step.limitIn <= 0)) return { code: 'no-limit', label }
  if (last.includes(step.after)) return { code: 'after-the-last', label }
  return null
}

/** Every step that the rules name is there, and nothing waits for what comes last. */
function badWaits({ changed, own }: RouteRules, table: StepTable): Fault {
  const asked = [
    ...Object.entries(changed).map(([ref, change]) => ({ ref: ref as StepRef, waitsFor: change?.waitsFor ?? [] })),
    ...own.map((step) => ({ ref: step.id as StepRef, waitsFor: [...step.waitsFor, step.after] })),
  ]
  return firstOf(asked, ({ ref, waitsFor }) => {
    const label = table.rowOf(ref).label
    if (waitsFor.some((other) => table.rowOf(other) === undefined)) return { code: 'waits-for-unknown', label }
    if (waitsFor.includes(ref)) return { code: 'waits-for-itself', label }
    return waitsFor.some((other) => last.includes(other)) && !last.includes(ref)
      ? { code: 'waits-for-the-last', label }
      : null
  })
}

/** Steps that wait for each other; found by following what each waits for. */
function circle({ rows, rowOf, hardBefore }: StepTable): Fault {
  const clear = new Set<StepRef>()
  const follow = (ref: StepRef, path: readonly StepRef[]): Fault => {
    if (clear.has(ref)) return null
    const at = path.indexOf(ref)
    if (at >= 0) {
      return { code: 'circle', labels: path.slice(at).map((each) => rowOf(each).label) }
    }
    const fault = firstOf(hardBefore.get(ref) ?? [], (before) => follow(before, [...path, ref]))
    if (fault === null) clear.add(ref)
    return fault
  }
  return firstOf(rows, ({ ref }) => follow(ref, []))
}

const stuck = (rules: RouteRules): Fault =>
  firstOf(walks(rules), ({ name, facts }) => {
    const { goesRound } = walkThrough(facts)
    return goesRound.length === 0 ? null : { code: 'endless', head: name, labels: goesRound }
  })
