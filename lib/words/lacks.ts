import { pointLabel } from '../core/readings/points'
import { readingSpecs } from '../core/readings/specs'
import type { ReadingKind } from '../core/readings/types'
import type { Lack } from '../core/route/codes'
import { formatFigure } from '../core/units/format-figure'
import { lower, pointOwed } from '../core/route/words'
import { reasonText } from './route'

export const figure = (value: number): string => String(Number(value.toFixed(2)))
const inches = (valueIn: number): string => `${valueIn.toFixed(4)} in`

/** "leak test: leaks" */
export const answerText = (kind: ReadingKind, answer: string): string => {
  const choice = readingSpecs[kind].choices?.find(({ value }) => value === answer)
  return `${lower(readingSpecs[kind].label)}: ${lower(choice?.label ?? answer)}`
}

type PastMakerLack = Omit<Extract<Lack, { code: 'past-maker' }>, 'code'>

/** "chamber 2 exhaust is 0.0210 in below the deck, under the engine maker’s minimum of 0.0240 in". */
export function pastMakerText({ point, what, side, valueIn, limitIn }: PastMakerLack): string {
  const end = `${side === 'under' ? 'minimum' : 'maximum'} of ${inches(limitIn)}`
  const place = pointLabel(point)
  if (what === 'thickness') return `${place} is ${inches(valueIn)} thick, ${side} the ${end}`
  const held = `${side} the engine maker’s ${end}`
  if (what === 'protrusion') return `the injector of ${place} stands ${inches(valueIn)} out of the deck, ${held}`
  const lies = valueIn < 0 ? `${inches(-valueIn)} proud of the deck` : `${inches(valueIn)} below the deck`
  return `${place} is ${lies}, ${held}`
}

type ValveOutLack = Omit<Extract<Lack, { code: 'valve-out' }>, 'code'>

/** "chamber 2 exhaust: seat width is 0.0750 in, over the maximum of 0.0700 in". */
export function valveOutText({ kind, point, side, value, limit }: ValveOutLack): string {
  const { label, quantity } = readingSpecs[kind]
  const said = (figure: number): string => (quantity ? formatFigure(figure, quantity) : String(figure))
  const place = point === '' ? '' : `${pointLabel(point)}: `
  return `${place}${lower(label)} is ${said(value)}, ${side} the ${side === 'under' ? 'minimum' : 'maximum'} of ${said(limit)}`
}

/** What is missing: "Wrap: not done"; "chamber 2 is 1.3 cc over the target of 60 (tolerance 0.5)". */
export function lackText(lack: Lack): string {
  switch (lack.code) {
    case 'not-done':
      return `${lack.label}: not done`
    case 'redo':
      return `${lack.label} must be done again: ${reasonText(lack.reason)}`
    case 'reading':
      return `${lack.label}: ${pointOwed(lack.kind, lack.point)}`
    case 'finished-cc':
      return `${pointLabel(lack.point)} has no finished cc`
    case 'stop':
      return `${lack.label}: ${answerText(lack.kind, lack.answer)}`
    case 'off-target': {
      const side = lack.offCc > 0 ? 'over' : 'under'
      const off = figure(Math.abs(lack.offCc))
      return `${pointLabel(lack.point)} is ${off} cc ${side} the target of ${lack.targetCc} (tolerance ${lack.toleranceCc})`
    }
    case 'under-class':
      return `${pointLabel(lack.point)} is ${figure(lack.shortCc)} cc under the class minimum of ${lack.minCc}`
    case 'not-straight':
      return `straightness ${lack.point} is ${inches(lack.valueIn)} (limit ${inches(lack.limitIn)})`
    case 'seat-near-deck':
      return `${pointLabel(lack.point)} seat is ${inches(lack.valueIn)} from the deck (minimum ${inches(lack.minIn)})`
    case 'past-maker':
      return pastMakerText(lack)
    case 'valve-out':
      return valveOutText(lack)
    case 'hold':
      return `on hold: ${lack.reason}`
    case 'findings': {
      const what = lack.count === 1 ? 'a finding is' : `${lack.count} findings are`
      return `${what} waiting for the customer’s answer`
    }
  }
}
