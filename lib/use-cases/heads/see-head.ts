import { cutToWords } from '@/lib/dossier/cut-to'
import { allow, can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import type { Gone } from '@/lib/core/head-now/gone'
import { must, RefusedError } from '@/lib/core/errors'
import { progress, type ProgressMark } from '@/lib/core/route/progress'
import { workLabel } from '@/lib/core/route/presets'
import { stationNamesOf } from '@/lib/core/route/rules-words'
import type { Missing, RouteStep, Whereabouts } from '@/lib/core/route/types'
import type { Station, WorkId } from '@/lib/core/route/step-ids'
import { formatFigure } from '@/lib/core/units/format-figure'
import { typedFigure } from '@/lib/core/units/typed-figure'
import { db } from '@/lib/data/db'
import { instrumentNames } from '@/lib/data/instruments'
import { namesOf } from '@/lib/data/people'
import { shopOf } from '@/lib/data/shop'
import { correctedSinceRelease } from '@/lib/dossier/corrected-since-release'
import { loadDossiers, type Dossier } from '@/lib/dossier/dossier'
import { heldMates, type HeldMate } from '@/lib/dossier/of-mates'
import { peopleOfChecks, secondCheckLines } from '@/lib/dossier/second-check'
import { whereaboutsOf } from '@/lib/dossier/whereabouts-of'
import type { Ruling } from '@/lib/core/rate/screen'
import { shopCutsOfVisits, type KeptCut } from '@/lib/data/rate-cuts'
import { headCutWords } from '@/lib/words/rate'
import { wantedWords, type WantedWords } from '@/lib/words/wanted'
import { gapsOf } from '@/lib/dossier/gaps'
import { sheetView, type SheetView } from '@/lib/dossier/valve-sheet-of'
import { findingRow, type FindingRow } from '@/lib/data/finding-row'
import { chamberTrend, type ChamberStage, type VisitReadings } from './chamber-trend'
import { readingLines, type Instrument, type ReadingLine } from './reading-lines'
import { thicknessTrend, type ThicknessTrend } from './thickness-trend'

export type { SheetView } from '@/lib/dossier/valve-sheet-of'

export type CutOfVisit = { readonly words: string; readonly ruling: Ruling | null; readonly isOpen: boolean }

export type VisitView = {
  readonly visitId: string
  readonly version: number
  readonly jobId: string
  readonly jobNumber: string
  readonly customer: string
  readonly customerId: string
  readonly pairId: string
  readonly bookedAt: Date
  /** The visit that this one comes back from; null when it is no comeback. */
  readonly comebackOf: { readonly jobNumber: string; readonly cause: string; readonly pays: string } | null
  /** Jobs on which this head came back from this visit. */
  readonly cameBackAs: readonly {
    readonly jobNumber: string
    readonly cause: string
    readonly pays: string
  }[]
  readonly matesHeld: readonly HeldMate[]
  readonly whereabouts: Whereabouts
  readonly target: string
  /** What the benches work to on it. */
  readonly wanted: WantedWords
  readonly ordered: readonly string[]
  readonly side: string
  readonly cameWith: string
  readonly rackPlace: string
  readonly plan: { readonly number: number; readonly record: PlanRecord; readonly accepted: string } | null
  /** At both edges; null: not known. */
  readonly removedBefore: Gone | null
  readonly route: readonly RouteStep[]
  /** What the shop calls its stations now. */
  readonly stationNames: Readonly<Record<Station, string>>
  /** What is to be said of its cut, and whether it is asked about; null: nothing. */
  readonly cut: CutOfVisit | null
  readonly marks: readonly ProgressMark[]
  readonly gaps: readonly Missing[]
  readonly readings: readonly ReadingLine[]
  /** Guides, seats, heights and springs, a row a valve; null: nothing of them was read. */
  readonly valveSheet: SheetView | null
  readonly holds: readonly {
    readonly id: string
    readonly version: number
    readonly reason: string
    readonly by: string
    readonly at: Date
    readonly decision: string | null
    readonly note: string
  }[]
  readonly findings: readonly FindingRow[]
  /** Both names of each second check, a sentence each. */
  readonly secondChecks: readonly string[]
  readonly waivers: readonly {
    readonly what: string
    readonly reason: string
    readonly by: string
    readonly at: Date
  }[]
  readonly outside: readonly {
    readonly orderId: string
    readonly number: string
    readonly vendor: string
    readonly back: boolean
  }[]
  readonly releases: readonly {
    readonly revision: number
    readonly at: Date
    readonly by: string
    readonly reason: string
  }[]
  readonly correctedSinceRelease: boolean
  readonly returned: string | null
  readonly handedOver: { readonly to: string; readonly at: Date } | null
}

export type HeadView = {
  readonly headId: string
  readonly tag: string
  readonly version: number
  /** It wears it now; '' when it has come off. */
  readonly wornTag: string
  readonly oldTags: readonly string[]
  readonly casting: string
  readonly chambers: number
  readonly stamp: string
  readonly marks: string
  readonly material: string
  readonly chamberTrend: readonly ChamberStage[]
  readonly thickness: ThicknessTrend
  readonly newThickness: string
  readonly visits: readonly VisitView[]
  readonly may: {
    readonly correct: boolean
    readonly ruleOnCut: boolean
    readonly release: boolean
    readonly waive: boolean
    readonly decideHold: boolean
    readonly askFinding: boolean
    readonly returnAsIs: boolean
    readonly send: boolean
    readonly tag: boolean
    readonly seeCustomer: boolean
    readonly book: boolean
  }
}

/** The whole record of one head: every visit, newest first, with its route, its readings and what is still missing. */
export async function seeHead(actor: Actor, headId: string): Promise<HeadView> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const dossiers = (await loadDossiers(client, { headId })).toSorted(newestFirst)
  const [newest] = dossiers
  if (!newest) throw new RefusedError({ code: 'not-found', message: 'Head not found.' })
  const { head } = newest.visit
  const stationNames = stationNamesOf(newest.today.values.rules)
  const visits = dossiers.map(({ visit }) => visit)
  const names = await namesOf([...visits.flatMap(peopleOf), ...dossiers.flatMap(peopleOfChecks)])
  const shop = await shopOf(client)
  const used = visits.flatMap(({ readings }) => readings.flatMap(({ instrumentId }) => instrumentId ?? []))
  const instruments = await instrumentNames(client, used)
  const cuts = await shopCutsOfVisits(
    client,
    visits.map(({ id }) => id),
  )
  const inOrder = dossiers.toReversed().map(visitReadings)
  const newIn = head.newThicknessIn ?? newest.casting.thicknessNewIn ?? null
  const active = head.tags.find((tag) => tag.to === null)
  return {
    headId,
    tag: newest.label,
    version: head.version,
    wornTag: active?.number ?? '',
    oldTags: head.tags.filter((tag) => tag !== active).map((tag) => tag.number),
    casting: head.casting?.name ?? 'casting not on record',
    chambers: head.casting?.chamberCount ?? 0,
    stamp: head.stamp,
    marks: head.marks,
    material: head.material,
    chamberTrend: chamberTrend(inOrder, head.casting?.chamberCount ?? 0),
    thickness: thicknessTrend(inOrder, newIn),
    newThickness: newIn === null ? '' : formatFigure(newIn, 'thickness'),
    visits: dossiers.map((dossier) => ({
      ...visitView(dossier, (id) => names.get(id) ?? '', instruments),
      secondChecks: secondCheckLines(dossier, (id) => names.get(id) ?? '', shop),
      ...comebacks(dossier.visit, visits),
      matesHeld: heldMates(dossier),
      stationNames,
      cut: cutOf(cuts, dossier.visit.id),
    })),
    may: {
      correct: can(actor, 'reading.correct'),
      ruleOnCut: can(actor, 'casting.change'),
      release: can(actor, 'visit.release'),
      waive: can(actor, 'visit.waive'),
      decideHold: can(actor, 'hold.decide'),
      askFinding: can(actor, 'finding.ask'),
      returnAsIs: can(actor, 'visit.return-as-is'),
      send: can(actor, 'outside.send'),
      tag: can(actor, 'head.tag'),
      seeCustomer: can(actor, 'customer.see'),
      book: can(actor, 'job.book'),
    },
  }
}

/** What is to be said of the visit's cut; null: it simply counts, or nothing was cut. */
function cutOf(cuts: readonly KeptCut[], visitId: string): CutOfVisit | null {
  const kept = cuts.find((one) => one.visitId === visitId)
  if (!kept) return null
  const { ruling, rulingReason, questioned, cut } = kept
  const words = headCutWords({ whyNot: cut.whyNot, ruling, rulingReason, questioned })
  return words === '' ? null : { words, ruling, isOpen: questioned && ruling === null }
}

type Visit = Dossier['visit']
type Name = (personId: string) => string

const newestFirst = (a: Dossier, b: Dossier): number => b.visit.createdAt.getTime() - a.visit.createdAt.getTime()

/** What the trends need of a visit. */
const visitReadings = ({ visit, readings, settings }: Dossier): VisitReadings => ({
  jobNumber: visit.job.number,
  readings,
  target:
    visit.targetCc === null
      ? null
      : {
          text: typedFigure({ text: visit.targetText, unit: visit.targetUnit }),
          cc: visit.targetCc,
          toleranceCc: settings.ccToleranceCc,
        },
})

/** Both directions of "came back": all visits of one head are at hand. */
function comebacks(visit: Visit, all: readonly Visit[]) {
  const from = all.find(({ id }) => id === visit.comebackOfId)
  const told = ({ job }: Visit, { comebackCause, comebackPays }: Visit) => ({
    jobNumber: job.number,
    cause: comebackCause,
    pays: comebackPays,
  })
  return {
    comebackOf: from ? told(from, visit) : null,
    cameBackAs: all.filter(({ comebackOfId }) => comebackOfId === visit.id).map((later) => told(later, later)),
  }
}

const peopleOf = (visit: Visit): string[] => [
  ...visit.readings.map((set) => set.byId),
  ...visit.holds.map((hold) => hold.openedById),
  ...visit.waivers.map((waiver) => waiver.byId),
  ...visit.releases.map((release) => release.byId),
]

function visitView(
  dossier: Dossier,
  name: Name,
  instruments: readonly Instrument[],
): Omit<VisitView, 'comebackOf' | 'cameBackAs' | 'matesHeld' | 'stationNames' | 'cut' | 'secondChecks'> {
  const { visit, facts, route, settings } = dossier
  const plan = visit.pair.plans[0]
  const acceptance = plan?.acceptances.at(-1)
  return {
    visitId: visit.id,
    version: visit.version,
    jobId: visit.jobId,
    jobNumber: visit.job.number,
    customer: visit.job.customer.contact?.name ?? '',
    customerId: visit.job.customerId,
    pairId: visit.pairId,
    bookedAt: visit.createdAt,
    whereabouts: whereaboutsOf(dossier),
    target: facts.flatDeck ? cutToWords(dossier) : visit.targetText,
    wanted: wantedWords(dossier.wanted),
    ordered: facts.ordered.map((work: WorkId) => workLabel(work, settings.rules)),
    side: visit.side,
    cameWith: visit.cameWith,
    rackPlace: visit.rackPlace,
    plan:
      plan && dossier.plan
        ? {
            number: plan.number,
            record: dossier.plan,
            accepted: acceptance ? `${acceptance.by}, ${acceptance.how}` : '',
          }
        : null,
    removedBefore: dossier.metalGone.ok ? dossier.metalGone.value.gone : null,
    route,
    marks: progress(route, facts.openHolds.length > 0),
    gaps: visit.returned || visit.handOver ? [] : gapsOf(dossier),
    readings: readingLines(visit, route, name, instruments),
    valveSheet: sheetView(dossier),
    holds: visit.holds.map((hold) => ({
      id: hold.id,
      version: hold.version,
      reason: hold.reason,
      by: name(hold.openedById),
      at: hold.openedAt,
      decision: hold.decision,
      note: hold.decisionNote,
    })),
    findings: visit.findings.map((finding) =>
      findingRow(finding, { tag: '', headId: visit.headId, jobNumber: visit.job.number }),
    ),
    waivers: visit.waivers.map(({ what, reason, byId, at }) => ({ what, reason, by: name(byId), at })),
    outside: visit.outside.map((line) => ({
      orderId: line.orderId,
      number: line.order.number,
      vendor: line.order.vendor.name,
      back: line.receivedAt !== null,
    })),
    releases: visit.releases.map(({ revision, at, byId, reason }) => ({
      revision,
      at,
      by: name(byId),
      reason,
    })),
    correctedSinceRelease: correctedSinceRelease(dossier),
    returned: visit.returned?.reason ?? null,
    handedOver: visit.handOver ? { to: visit.handOver.takenBy, at: visit.handOver.at } : null,
  }
}
