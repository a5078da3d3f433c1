import { noPhoto } from '@/lib/core/readings/photo-answer'
import type { ReadingKind } from '@/lib/core/readings/types'
import { isValveKind } from '@/lib/core/readings/valve-kinds'
import type { StepField } from '@/lib/use-cases/stations/see-step'

/** What has been typed so far, by kind and point. */
export type Answers = Readonly<Record<string, Answer>>

export type Answer = {
  readonly text: string
  readonly notTaken: string | null
  /** An unlikely figure as it is typed the second time. */
  readonly again?: string | undefined
  /** Of a chamber that has a value: 'again', or the reading that this one replaces. */
  readonly repeat?: string | undefined
  /** It came with "All alike": nobody measured it at this valve. */
  readonly filled?: true | undefined
}

export const answerKey = (kind: ReadingKind, point: string): string => `${kind}|${point}`

export const labelOf = ({ spec, pointLabel }: StepField): string =>
  pointLabel === '' ? spec.label : `${spec.label}, ${pointLabel}`

/** The answers that are not what they were. */
export const changedKeys = (was: Answers, now: Answers): string[] =>
  [...new Set([...Object.keys(was), ...Object.keys(now)])].filter(
    (key) =>
      was[key]?.text !== now[key]?.text ||
      was[key]?.notTaken !== now[key]?.notTaken ||
      was[key]?.repeat !== now[key]?.repeat ||
      was[key]?.filled !== now[key]?.filled,
  )

/** Those of the valve sheet, and the others. */
export const atValves = ({ kind }: StepField): boolean => isValveKind(kind)

/** The fields of a step, one group a kind, in the order they are owed; what one tap answers comes before the figures. */
export function fieldGroups(fields: readonly StepField[]): StepField[][] {
  const groups = new Map<ReadingKind, StepField[]>()
  for (const field of fields) groups.set(field.kind, [...(groups.get(field.kind) ?? []), field])
  const isTapped = ([first]: StepField[]): boolean => first?.spec.choices !== undefined
  return [...groups.values()].toSorted((a, b) => Number(isTapped(b)) - Number(isTapped(a)))
}

/** What goes to the server: everything typed; what stands there already is not sent again. */
export function typedReadings(answers: Answers, instruments: Readonly<Record<string, string>> = {}) {
  return Object.entries(answers)
    .filter(([, answer]) => answer.text.trim() !== '' || (answer.notTaken ?? '').trim() !== '')
    .map(([key, answer]) => {
      const [kind = '', point = ''] = key.split('|')
      const text = answer.text.trim()
      return {
        kind: kind as ReadingKind,
        point,
        text: kind === 'photo' ? noPhoto(text) : text,
        notTaken: answer.notTaken,
        ...(answer.repeat === undefined ? {} : { repeat: answer.repeat }),
        ...(answer.again ? { again: answer.again } : {}),
        ...(instruments[kind] ? { instrumentId: instruments[kind] } : {}),
        ...(answer.filled ? { filled: true } : {}),
      }
    })
}

/** The cells that take a figure: those asked for, and lifts that were added. */
export const figureKeys = (fields: readonly StepField[], answers: Answers): string[] => [
  ...new Set([
    ...fields.filter(({ spec }) => spec.form === 'figure').map(({ kind, point }) => answerKey(kind, point)),
    ...Object.keys(answers).filter((key) => key.startsWith('flow|')),
  ]),
]

/** One cell, which its own label names: such kinds stand side by side. */
export const isSingle = (fields: readonly StepField[]): boolean => fields.length === 1 && fields[0]?.pointLabel === ''
