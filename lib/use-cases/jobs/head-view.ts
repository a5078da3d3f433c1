import { cutToWords } from '@/lib/dossier/cut-to'
import { workLabel } from '@/lib/core/route/presets'
import { stationName } from '@/lib/core/route/rules-words'
import type { RouteStep, Whereabouts } from '@/lib/core/route/types'
import type { WorkId } from '@/lib/core/route/step-ids'
import { whyWaiting, type FromVendor } from '@/lib/core/route/why-waiting'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { Dossier } from '@/lib/dossier/dossier'
import { hasLeft } from '@/lib/dossier/has-left'
import { heldMates, type HeldMate } from '@/lib/dossier/of-mates'
import { whereaboutsOf } from '@/lib/dossier/whereabouts-of'
import { afterWhereText } from '@/lib/words/why-waiting'

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
  /** What it is cut to, in words; '' where nothing was asked. */
  readonly cutTo: string
  readonly hasChambers: boolean
  readonly target: string
  readonly comeback: { readonly cause: string; readonly pays: string } | null
  readonly whereabouts: Whereabouts
  /** It may be handed over now; it has left. */
  readonly mayGo: boolean
  readonly gone: boolean
  /** It may still be taken off the job. */
  readonly mayTakeOff: boolean
  /** Goes on from where it is: ": bent stud" after "held", ", not here yet" after "expected". */
  readonly more: string
  readonly matesHeld: readonly HeldMate[]
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

/** Its work by the rules of the day it was booked; stations by their names of today. `supply`: who sends it. */
export function headView(dossier: Dossier, supply: readonly FromVendor[], locale: string): JobHead {
  const { visit, route, settings, facts } = dossier
  const open = route.filter((step) => step.state === 'ready' || step.state === 'started' || step.state === 'do again')
  const rulesNow = dossier.today.values.rules
  const whereabouts = whereaboutsOf(dossier)
  const holds = visit.holds.filter(({ decidedAt }) => decidedAt === null)
  const why = whyWaiting({
    whereabouts,
    steps: open,
    holds,
    waits: visit.waits.filter(({ arrivedAt }) => arrivedAt === null),
    findings: visit.findings.filter(({ answer }) => answer === null),
    supply,
    outside: visit.outside.flatMap(({ receivedAt, order }) =>
      receivedAt === null && order.sentAt !== null ? [{ vendor: order.vendor.name, promisedOn: order.promisedOn }] : [],
    ),
  })
  return {
    visitId: visit.id,
    version: visit.version,
    headId: visit.headId,
    pairId: visit.pairId,
    tag: dossier.label,
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
    cutTo: cutToWords(dossier),
    hasChambers: !facts.flatDeck,
    target: typedFigure({ text: visit.targetText, unit: visit.targetUnit }),
    comeback: visit.comebackOfId === null ? null : { cause: visit.comebackCause, pays: visit.comebackPays },
    whereabouts,
    mayGo: visit.handOver === null && (visit.releases.length > 0 || visit.returned !== null),
    gone: visit.handOver !== null,
    mayTakeOff: !hasLeft(visit) && visit.releases.length === 0,
    more: visit.takenOffAt === null ? afterWhereText(why, rulesNow, locale) : `: ${visit.takenOffWhy}`,
    matesHeld: heldMates(dossier),
    ordered: visit.ordered.flatMap(({ id, work, note, endedAt }) =>
      endedAt === null ? [{ id, work: work as WorkId, label: workLabel(work as WorkId, settings.rules), note }] : [],
    ),
    route,
    held: holds.length > 0,
    next: open.map(({ label, station }) => ({ label, station, stationLabel: stationName(station, rulesNow) })),
  }
}
