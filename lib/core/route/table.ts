import { causedBy, makesDoAgain, workSteps, type Cause } from './do-again'
import type { StepRef } from './keys'
import { raised } from './floors'
import { advised, hard, machined } from './order'
import { ownConditionHolds } from './own-condition-holds'
import { noRules, type OwnStep, type RouteRules } from './rules'
import { stepLabels, stepTable, type StepRow } from './steps'
import type { StepId } from './step-ids'

/** A row of the table as it stands in this shop; `own` at the steps that it added. */
export type ShopRow = StepRow & { readonly own?: OwnStep }

/** The tables of the route as this shop has them. */
export type StepTable = {
  /** In working order. */
  readonly rows: readonly ShopRow[]
  readonly rowOf: (ref: StepRef) => ShopRow
  /** What must be done before each step, in working order. */
  readonly hardBefore: ReadonlyMap<StepRef, readonly StepRef[]>
  /** What had better be done before each step, beyond what must. */
  readonly advisedBefore: ReadonlyMap<StepRef, readonly StepRef[]>
  /** The steps whose work is the cause; none for a cause that is no step's work. */
  readonly causedBy: (cause: Cause) => readonly StepRef[]
  readonly makesDoAgain: (cause: Cause) => readonly StepRef[]
  readonly isWork: (ref: StepRef) => boolean
  /** Chips, grit or dust: the head is rinsed before it is measured. */
  readonly makesDirt: (ref: StepRef) => boolean
}

const made = new WeakMap<RouteRules, StepTable>()

/** The tables with what the shop made of them: the same rules give the same tables. */
export function tableOf(rules: RouteRules): StepTable {
  const known = made.get(rules) ?? makeTable(rules)
  made.set(rules, known)
  return known
}

function makeTable(rules: RouteRules): StepTable {
  const rows = rowsOf(rules)
  const byRef = new Map(rows.map((row) => [row.ref, row]))
  const machining = rules.own.filter((step) => step.machining).map((step): StepRef => step.id)
  const before = ofEach(rows, (ref) => demanded(ref, rows, rules, machining))
  const added = addedDoAgain(rules)
  return {
    rows,
    rowOf: (ref) => byRef.get(ref) as ShopRow,
    hardBefore: before,
    advisedBefore: ofEach(rows, (ref) => (advised[ref] ?? []).filter((other) => !before.get(ref)?.includes(other))),
    causedBy: (cause) =>
      cause === 'shop-step' ? machining : cause in causedBy ? causedBy[cause as keyof typeof causedBy] : [],
    makesDoAgain: (cause) => [...makesDoAgain[cause], ...(added.get(cause) ?? [])],
    isWork: (ref) => workSteps.has(ref) || machining.includes(ref),
    makesDirt: (ref) => machined.includes(ref) || machining.includes(ref),
  }
}

/** The steps that stand from the start as the shop has them, each with the shop's own right after it. */
function rowsOf({ changed, own }: RouteRules): ShopRow[] {
  const placed: ShopRow[] = stepTable.map((row) => {
    const { label, station, cells } = changed[row.ref] ?? {}
    return {
      ...row,
      label: label ?? row.label,
      station: station ?? row.station,
      cells: raised(row.ref, cells ?? row.cells),
    }
  })
  for (const step of own) {
    let place = placed.findIndex(({ ref }) => ref === step.after) + 1
    while (placed[place]?.own?.after === step.after) place += 1
    placed.splice(place, 0, ownRow(step))
  }
  return placed
}

const nowhere: StepRow['cells'] = ['–', '–', '–', '–']

const ownRow = (step: OwnStep): ShopRow => {
  const { id, label, station, cells, when, limitIn, retired } = step
  return {
    ref: id,
    stepId: id,
    label,
    station,
    cells: retired ? nowhere : cells,
    when: (context) =>
      when !== '' && ownConditionHolds(when, limitIn ?? 0, context) ? { code: 'own', condition: when, limitIn } : null,
    own: step,
  }
}

function demanded(
  ref: StepRef,
  rows: readonly ShopRow[],
  { changed, own }: RouteRules,
  machining: readonly StepRef[],
): readonly StepRef[] {
  if (ref === 'check-in') return []
  const shops = own.find((step) => step.id === ref)?.waitsFor ?? changed[ref]?.waitsFor ?? []
  const all = rows.map((row) => row.ref).filter((other) => other !== 'final' && other !== 'hand-over')
  return [
    'check-in',
    ...(hard[ref] ?? []),
    ...(ref === 'wash-out' ? machining : []),
    ...(ref === 'final' ? all : []),
    ...shops,
  ]
}

function addedDoAgain({ changed, own }: RouteRules): ReadonlyMap<Cause, readonly StepRef[]> {
  const added = new Map<Cause, StepRef[]>()
  const add = (ref: StepRef, causes: readonly Cause[] = []) => {
    for (const cause of causes) added.set(cause, [...(added.get(cause) ?? []), ref])
  }
  for (const [ref, change] of Object.entries(changed)) add(ref as StepRef, change?.undoneBy)
  for (const step of own) add(step.id, step.undoneBy)
  return added
}

function ofEach(
  rows: readonly ShopRow[],
  before: (ref: StepRef) => readonly StepRef[],
): ReadonlyMap<StepRef, readonly StepRef[]> {
  return new Map(
    rows.map(({ ref }) => {
      const wanted = new Set(before(ref))
      return [ref, rows.map((row) => row.ref).filter((other) => wanted.has(other))]
    }),
  )
}

/** What this shop calls a step, where no flow run is meant in particular; its id in words once it is not in the table. */
export const stepLabel = (stepId: StepId, rules: RouteRules = noRules): string =>
  stepId === 'flow' ? stepLabels.flow : (tableOf(rules).rowOf(stepId)?.label ?? 'a step of earlier days')
