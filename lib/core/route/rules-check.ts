import { ok, refuse, type Result } from '../errors'
import type { StepRef } from './keys'
import { ownConditions } from './own-conditions'
import type { OwnStep, RouteRules } from './rules'
import type { Cells } from './cells'
import { isOwnStep } from './step-ids'
import { stationLabels } from './stations'
import { tableOf, type StepTable } from './table'
import { walkThrough, walks } from './walk'
import { listed, lower } from './words'

/** Their cells stand: without them a head does not come in, is not cut or does not leave. */
export const fixedCells: readonly StepRef[] = [
  'check-in',
  'angle-cut',
  'arrival-count',
  'arrival-figures',
  'flat-cut',
  'final',
  'hand-over',
]

/** Nothing waits for these but each other, and nothing stands after them. */
const last: readonly StepRef[] = ['final', 'hand-over']

/**
 * Whether a head can go through under these rules, whatever is to be done to it. Names must tell steps and stations
 * apart, cells must say something, nothing may wait in a circle, and a trial head of each kind of cut, new and used, with
 * everything ordered, must come to its hand over. Refused with the steps that stand in each other's way.
 *
 * Example: deburr waits for a step of the shop that itself waits for deburr → refused, with both names.
 */
export function checkRules(rules: RouteRules): Result<RouteRules> {
  const table = tableOf(rules)
  const found =
    badStations(rules) ??
    badNames(table) ??
    badCells(rules) ??
    firstOf(rules.own, (step) => badOwn(step, rules)) ??
    badWaits(rules, table) ??
    circle(table) ??
    stuck(rules)
  return found === null ? ok(rules) : refuse('invalid', found)
}

type Fault = string | null

function firstOf<T>(items: readonly T[], check: (item: T) => Fault): Fault {
  for (const item of items) {
    const fault = check(item)
    if (fault !== null) return fault
  }
  return null
}

const longest = 60

/** The name that stands twice, or is not one; null when all are different. */
function badName(names: readonly string[], what: string): Fault {
  const seen = new Set<string>()
  return firstOf(names, (name) => {
    const plain = name.trim().toLowerCase()
    if (plain === '') return `Give every ${what} a name.`
    if (name.length > longest) return `“${name}” is too long: ${longest} letters at most.`
    if (seen.has(plain)) return `Two ${what}s have the name “${name}”.`
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
    if (row === undefined) return 'Step not found. Reload the page.'
    if (cells === undefined) return null
    if (fixedCells.includes(ref)) return `${row.label}: the shop cannot change when this step is needed.`
    return cells.includes('◐') && !row.when ? `${row.label} cannot be conditional.` : null
  })
}

function badOwn(step: OwnStep, { own }: RouteRules): Fault {
  if (!isOwnStep(step.id) || own.filter(({ id }) => id === step.id).length > 1) return 'A step was added twice.'
  const onCondition = step.cells.includes('◐')
  if (onCondition && step.when === '') return `${step.label}: choose a condition.`
  if (!onCondition && step.when !== '') return `${step.label}: mark at least one column as conditional.`
  const hasLimit = step.when !== '' && ownConditions[step.when].hasLimit
  if (hasLimit && (step.limitIn === null || step.limitIn <= 0)) return `${step.label}: enter the limit.`
  if (last.includes(step.after)) return `${step.label}: choose a place before the final inspection.`
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
    if (waitsFor.some((other) => table.rowOf(other) === undefined)) return `${label} names a step that does not exist.`
    if (waitsFor.includes(ref)) return `${label} cannot wait for itself.`
    return waitsFor.some((other) => last.includes(other)) && !last.includes(ref)
      ? `${label} cannot wait for the last steps.`
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
      const names = path.slice(at).map((each) => lower(rowOf(each).label))
      return `These steps would wait for each other: ${listed(names)}.`
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
    return goesRound.length === 0
      ? null
      : `A head with ${name} would never be finished: ${listed(goesRound.map(lower))} would repeat endlessly.`
  })
