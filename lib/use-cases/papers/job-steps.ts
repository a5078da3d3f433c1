import { pointLabel } from '@/lib/core/readings/points'
import { readingSpecs } from '@/lib/core/readings/specs'
import { keyText, sameKey } from '@/lib/core/route/keys'
import { stationName } from '@/lib/core/route/rules-words'
import type { Owed, RouteStep } from '@/lib/core/route/types'
import { quantities } from '@/lib/core/units/quantities'
import type { JobSheetOwed, JobSheetStep } from '@/lib/pdf/job-sheet'
import type { PaperHead } from './paper-head'
import { answerWords, bareText } from './read'

/** Every step of the route with a blank for each reading it owes, and what was read already on its line. */
export const jobSteps = (head: PaperHead): JobSheetStep[] =>
  head.route
    .filter((step) => step.state !== 'not needed')
    .map((step) => ({
      label: step.label,
      station: stationName(step.station, head.settings.rules),
      state: step.state,
      outside: outsideWords(head, step),
      note: noteWords(head, step),
      owes: step.owes.map((owed) => owedBlanks(head, step, owed)),
    }))

function outsideWords({ facts }: PaperHead, step: RouteStep): string {
  if (step.byVendor !== '') return `done by ${step.byVendor}`
  const order = facts.orders.find((entry) => entry.receivedSeq === null && entry.scope.includes(step.stepId))
  return step.outside && order ? `at ${order.vendor}, order ${order.number}` : ''
}

function noteWords({ visit }: PaperHead, step: RouteStep): string {
  if (step.state === 'waived') {
    const waiver = visit.waivers.findLast((entry) => entry.gap.startsWith(`step:${keyText(step)}`))
    return waiver?.reason ?? ''
  }
  if (step.reason !== '') return step.reason
  return step.isNew ? 'new under this plan' : step.advice
}

function owedBlanks(head: PaperHead, step: RouteStep, { kind, points }: Owed): JobSheetOwed {
  const { label, quantity } = readingSpecs[kind]
  const unit = quantity ? quantities[quantity].unit : ''
  const read = head.readings.filter((reading) => reading.kind === kind && sameKey(reading.step, step))
  return {
    label,
    unit,
    points: points.map((point) => {
      const reading = read.find((entry) => entry.point === point)
      if (!reading) return { label: pointLabel(point), value: null }
      const { value } = reading
      return {
        label: pointLabel(point),
        value: value === null ? answerWords(reading) : bareText({ ...reading, value }, unit),
      }
    }),
  }
}
