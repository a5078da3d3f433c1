import { workLabel } from '@/lib/core/route/presets'
import type { RouteRules } from '@/lib/core/route/rules'
import { stationName } from '@/lib/core/route/rules-words'
import type { RouteStep, Whereabouts } from '@/lib/core/route/types'
import type { WorkId } from '@/lib/core/route/step-ids'
import { headName } from '@/lib/core/shop/tag-number'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { JobRecord } from '@/lib/data/jobs'
import { routeStepOf } from '@/lib/data/visits'
import { whyWaiting } from '@/lib/core/route/why-waiting'

export type JobHead = {
  readonly visitId: string
  readonly version: number
  readonly headId: string
  readonly pairId: string
  readonly tag: string
  readonly stamp: string
  readonly marks: string
  readonly casting: string
  readonly material: string
  readonly side: string
  readonly source: 'customer' | 'bought' | 'bought-cut'
  readonly used: boolean
  readonly cameWith: string
  readonly ownedBy: string
  readonly rackPlace: string
  /** As typed, with its unit; '' when none. Present: asked or from the record, not measured. */
  readonly present: string
  readonly target: string
  readonly comeback: { readonly cause: string; readonly pays: string } | null
  readonly whereabouts: Whereabouts
  readonly why: string
  readonly ordered: readonly {
    readonly id: string
    readonly work: WorkId
    readonly label: string
    readonly note: string
  }[]
  readonly route: readonly RouteStep[]
  readonly held: boolean
  /** Steps that can be done now. */
  readonly next: readonly {
    readonly label: string
    readonly station: string
    readonly stationLabel: string
  }[]
}

/** Its work by the rules of the day it was booked; stations by their names of today. */
export function headView(
  visit: JobRecord['visits'][number],
  jobNumber: string,
  rules: RouteRules,
  rulesNow: RouteRules,
): JobHead {
  const route = visit.steps.map(routeStepOf)
  const open = route.filter((step) => step.state === 'ready' || step.state === 'started' || step.state === 'do again')
  return {
    visitId: visit.id,
    version: visit.version,
    headId: visit.headId,
    pairId: visit.pairId,
    tag: headName(visit.head.tags.toReversed(), jobNumber, visit.position),
    stamp: visit.head.stamp,
    marks: visit.head.marks,
    casting: visit.head.casting?.name ?? '',
    material: visit.head.material,
    side: visit.side,
    source: visit.source as JobHead['source'],
    used: visit.used,
    cameWith: visit.cameWith,
    ownedBy: visit.ownedBy,
    rackPlace: visit.rackPlace,
    present: typedFigure({ text: visit.presentText, unit: visit.presentUnit }),
    target: typedFigure({ text: visit.targetText, unit: visit.targetUnit }),
    comeback: visit.comebackOfId === null ? null : { cause: visit.comebackCause, pays: visit.comebackPays },
    whereabouts: (visit.place?.whereabouts ?? 'expected') as Whereabouts,
    why: whyWaiting({ ...visit, steps: open }, rulesNow),
    ordered: visit.ordered.map(({ id, work, note }) => {
      return { id, work: work as WorkId, label: workLabel(work as WorkId, rules), note }
    }),
    route,
    held: visit.holds.length > 0,
    next: open.map(({ label, station }) => ({ label, station, stationLabel: stationName(station, rulesNow) })),
  }
}
