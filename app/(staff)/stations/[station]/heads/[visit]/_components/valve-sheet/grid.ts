import { valveAt, type Port, type Valve } from '@/lib/core/readings/valves'
import type { ValveKind } from '@/lib/core/readings/valve-kinds'
import { columnOf } from '@/lib/core/valve-sheet/columns'
import { valveName } from '@/lib/core/valve-sheet/sheet'
import type { Quantity } from '@/lib/core/units/quantities'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { answerKey, type Answer, type Answers } from '../answers'

/** A row: one valve, or all of a kind, whose figure fills the cells of the column that nobody measured. */
export type Row = { readonly point: string; readonly name: string; readonly port: Port; readonly all: boolean }

export type Column = {
  readonly kind: ValveKind
  readonly label: string
  readonly short: string
  /** Null: words are picked there, not typed. */
  readonly quantity: Quantity | null
  readonly fields: readonly StepField[]
}

/** The columns of a step, in the order of the sheet; every one has the same valves. */
export function columnsOf(fields: readonly StepField[]): readonly Column[] {
  const kinds = [...new Set(fields.map(({ kind }) => kind as ValveKind))]
  return kinds.flatMap((kind) => {
    const own = fields.filter((field) => field.kind === kind)
    const [first] = own
    if (!first) return []
    const { short } = columnOf(kind)
    return [{ kind, label: first.spec.label, short, quantity: first.spec.quantity ?? null, fields: own }]
  })
}

/** All of a kind first, then each valve. */
export function rowsOf(columns: readonly Column[]): readonly Row[] {
  const points = columns[0]?.fields.map(({ point }) => point) ?? []
  const valves = points.flatMap((point) => valveAt(point) ?? [])
  const most = (port: Port) => Math.max(1, ...valves.filter((one) => one.port === port).map(({ number }) => number))
  const counts = { intake: most('intake'), exhaust: most('exhaust') }
  const ports = [...new Set(valves.map(({ port }) => port))]
  return [
    ...ports.map((port) => ({ point: allOf(port), name: `All ${port} alike`, port, all: true })),
    ...valves.map((valve: Valve, at) => ({
      point: points[at] ?? '',
      name: valveName(valve, counts),
      port: valve.port,
      all: false,
    })),
  ]
}

export const allOf = (port: Port): string => `all ${port}`

const isTyped = (answer: Answer | undefined): answer is Answer => answer !== undefined && answer.text.trim() !== ''

/** Measured at this valve, now or before: what is filled in one go passes it by. */
const isMeasured = (field: StepField, answer: Answer | undefined): boolean =>
  isTyped(answer) ? answer.filled !== true : field.answer !== null && !field.filled

const ofPort = ({ fields }: Column, port: Port): readonly StepField[] =>
  fields.filter(({ point }) => valveAt(point)?.port === port)

const keyOf = ({ kind, point }: StepField): string => answerKey(kind, point)

/** The cells that the row of all of a kind fills. */
export const filledBy = (column: Column, port: Port, answers: Answers): readonly StepField[] =>
  ofPort(column, port).filter((field) => !isMeasured(field, answers[keyOf(field)]))

/** The same figure in every cell of a kind that nobody measured; '' empties them. */
export const fillAll = (column: Column, port: Port, text: string, answers: Answers): Answers => ({
  ...answers,
  ...Object.fromEntries(
    filledBy(column, port, answers).map((field) => [keyOf(field), { text, notTaken: null, filled: true as const }]),
  ),
})

/** What stands in the row of all of a kind: the one figure that was filled; '' where there is none. */
export function textOfAll(column: Column, port: Port, answers: Answers): string {
  const texts = filledBy(column, port, answers).map((field) => answers[keyOf(field)]?.text ?? '')
  return texts.every((text) => text === texts[0]) ? (texts[0] ?? '') : ''
}

/** How a cell stands: typed or kept, measured or filled. */
export function standing(field: StepField, answer: Answer | undefined): 'open' | 'filled' | 'given' {
  if (isTyped(answer)) return answer.filled ? 'filled' : 'given'
  if (field.answer === null) return 'open'
  return field.filled ? 'filled' : 'given'
}

export type Place = { readonly kind: ValveKind; readonly point: string }

/** The next cell without an answer: down the column, then the columns after, then from the first on; null: none is left. */
export function nextEmpty(columns: readonly Column[], answers: Answers, from: Place): Place | null {
  const cells = columns.flatMap(({ kind, fields }) => fields.map((field) => ({ kind, field })))
  const at = cells.findIndex(({ kind, field }) => kind === from.kind && field.point === from.point)
  const start = at < 0 ? cells.findIndex(({ kind }) => kind === from.kind) : at + 1
  const inOrder = [...cells.slice(Math.max(0, start)), ...cells.slice(0, Math.max(0, start))]
  const open = inOrder.find(
    ({ kind, field }) =>
      standing(field, answers[keyOf(field)]) === 'open' && !(kind === from.kind && field.point === from.point),
  )
  return open ? { kind: open.kind, point: open.field.point } : null
}

/** How many of a column's cells are filled, not measured. */
export const filledCount = ({ fields }: Column, answers: Answers): number =>
  fields.filter((field) => standing(field, answers[keyOf(field)]) === 'filled').length
