import { keyText } from '../core/route/keys'
import type { RouteStep } from '../core/route/types'
import { reasonText, whyText } from './route'

/**
 * What becomes of a head's route when it is made by other rules, a line each: steps that come, go or are opened again,
 * and those that are called or stand elsewhere. Example: "Crack check is no longer needed".
 */
export function routeChanges(
  before: readonly RouteStep[],
  after: readonly RouteStep[],
  stationName: (station: RouteStep['station']) => string,
): string[] {
  const was = new Map(before.filter(onRoute).map((step) => [keyText(step), step]))
  const is = new Map(after.filter(onRoute).map((step) => [keyText(step), step]))
  const gone = [...was].filter(([key]) => !is.has(key)).map(([, { label }]) => `${label} is no longer needed`)
  const here = [...is].flatMap(([key, step]) => changesOf(was.get(key), step, stationName))
  return [...gone, ...here]
}

const onRoute = ({ state }: RouteStep): boolean => state !== 'not needed'

function changesOf(
  old: RouteStep | undefined,
  step: RouteStep,
  stationName: (station: RouteStep['station']) => string,
): string[] {
  if (!old) return [`${step.label} is needed: ${whyText(step.why)}`]
  return [
    ...(old.label === step.label ? [] : [`${old.label} is called ${step.label}`]),
    ...(old.station === step.station ? [] : [`${step.label} is done at ${stationName(step.station).toLowerCase()}`]),
    ...(old.state === step.state || !opened(old, step)
      ? []
      : [`${step.label} must be done again: ${reasonText(step.reason)}`]),
    ...(owedBy(step) > owedBy(old) ? [`${step.label} asks for more readings`] : []),
  ]
}

const opened = (old: RouteStep, step: RouteStep): boolean =>
  (old.state === 'done' || old.state === 'waived') && step.state === 'do again'

const owedBy = ({ owes }: RouteStep): number => owes.reduce((sum, { missing }) => sum + missing.length, 0)
