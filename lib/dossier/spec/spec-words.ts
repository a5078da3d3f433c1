import { workLabel } from '@/lib/core/route/presets'
import type { RouteStep } from '@/lib/core/route/types'
import { orderText } from '@/lib/words/route'
import type { Station, StepId } from '@/lib/core/route/step-ids'
import { lower } from '@/lib/core/route/words'
import { formatFigure } from '@/lib/core/units/format-figure'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { Dossier } from '../dossier'

type EngineRow = Dossier['visit']['job']['engine']

/** "small V8, bore 4.030 in, stroke 3.480 in"; '' when nothing is known. */
export function engineWords(engine: EngineRow): string {
  const figure = (key: string, label: string): string => {
    const row = engine?.figures.find((entry) => entry.key === key)
    return row ? `${label} ${typedFigure(row)}` : ''
  }
  return [engine?.label ?? '', figure('boreIn', 'bore'), figure('strokeIn', 'stroke')]
    .filter((part) => part !== '')
    .join(', ')
}

type CastHead = { readonly casting: { readonly name: string } | null; readonly chamberForm: string }

export const castingWords = ({ visit }: { readonly visit: { readonly head: CastHead } }): string =>
  [visit.head.casting?.name ?? 'casting not on record', visit.head.chamberForm === 'opened' ? 'opened chamber' : '']
    .filter((part) => part !== '')
    .join(', ')

export const marksWords = ({ visit: { head } }: Dossier): string =>
  [head.stamp === '' ? '' : `stamped ${head.stamp}`, head.marks].filter((part) => part !== '').join(' · ')

const sides: Readonly<Record<string, string>> = {
  left: 'left bank',
  right: 'right bank',
  either: 'fits either side',
  only: 'the only head',
}

/** The side it goes on, in words; '' when nobody said. */
export const sideWords = (side: string): string => sides[side.trim().toLowerCase()] ?? side.trim()

/** "60 cc, each within 0.5 cc"; '' when none was asked. */
export function targetWords({ visit, settings }: Dossier): string {
  if (visit.targetCc === null) return ''
  const target = typedFigure({ text: visit.targetText, unit: visit.targetUnit })
  return `${target}, each within ${formatFigure(settings.ccToleranceCc, 'chamberVolume')}`
}

/** What the customer ordered, a line each. */
export function askedWords(head: Dossier): string[] {
  const { job } = head.visit
  const target = targetWords(head)
  return [
    target === '' ? '' : `Chambers to ${target}`,
    ...head.facts.ordered.map((work) => workLabel(work, head.facts.settings.rules)),
    job.classFlatOnly ? 'Class rule: flat cuts only' : '',
    job.classMinText === '' ? '' : `Class rule: chambers no smaller than ${job.classMinText}`,
    job.classMaxCutText === '' ? '' : `Class rule: no deeper than ${job.classMaxCutText}`,
    job.finishAsked === '' ? '' : `Deck finish: ${job.finishAsked}`,
  ].filter((line) => line !== '')
}

/** The shop's own housekeeping, which the customer did not order and does not see. */
const housekeeping: readonly StepId[] = ['check-in', 'arrival-count', 'hand-over']

/** What was done where, as a customer would tell it. */
const deeds: Readonly<Record<Station, string>> = {
  'measuring-bench': 'Measured and inspected',
  'flow-bench': 'Measured and inspected',
  'deck-mill': 'Machined',
  'intake-mill': 'Machined',
  outside: 'Machined',
  'port-bench': 'Ports and chambers',
  'bolt-bench': 'Bolts and seats',
  'seat-machine': 'Bolts and seats',
  wash: 'Washed and assembled',
  assembly: 'Washed and assembled',
  'front-desk': 'Front desk',
}

/** Steps that were done, a line a kind of work: "Machined: flat cut, deburr and chamfer". */
export function doneWords(route: readonly RouteStep[]): string[] {
  const lines = new Map<string, string[]>()
  for (const step of route) {
    if (step.state !== 'done' || housekeeping.includes(step.stepId)) continue
    const deed = deeds[step.station]
    const by = step.byVendor ? ` (${orderText(step.byVendor)})` : ''
    lines.set(deed, [...(lines.get(deed) ?? []), `${lower(step.label)}${by}`])
  }
  return [...lines].map(([deed, steps]) => `${deed}: ${steps.join(', ')}`)
}
