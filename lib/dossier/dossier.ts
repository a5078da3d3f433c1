import type { OwnRepeats } from '@/lib/core/chamber/burette'
import { chamberChanges, type ChamberChange } from '@/lib/core/chamber/changes'
import type { RepeatTally } from '@/lib/core/chamber/repeatability'
import { repeatsOfHead, standingRepeats } from '@/lib/core/chamber/repeats'
import type { CastingFacts } from '@/lib/core/casting/figures'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import type { EngineFacts } from '@/lib/core/engine/figures'
import { RefusedError, type Result } from '@/lib/core/errors'
import { mostGoneIn, sumOfGone, type Gone } from '@/lib/core/head-now/gone'
import type { EarlierGone, MetalGone } from '@/lib/core/head-now/metal-gone'
import { shopCutOf } from '@/lib/core/rate/shop-cut'
import { effectiveReadings, newestReadings, type EffectiveReading } from '@/lib/core/readings/effective'
import { computeRoute } from '@/lib/core/route/compute-route'
import type { RouteFacts, RouteStep } from '@/lib/core/route/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { wantedOf, type Wanted } from '@/lib/core/wanted/wanted-of'
import type { Reader } from '@/lib/data/db'
import { planRecordOf } from '@/lib/data/facts'
import { castingFactsOf, engineFactsOf } from '@/lib/data/known-figures'
import type { CurrentSettings } from '@/lib/data/settings'
import { readVisits, type VisitRecord, type WhichVisits } from '@/lib/data/visit-records'
import { headLabel } from '@/lib/core/shop/tag-number'
import { matesOf, type Mate } from './mates'
import { cutFactsOf } from './cut-facts'
import { metalGoneOf } from './metal-gone'
import { deckOf, chambersOf, eventFacts, orderFacts, routeFacts } from './route-facts'
import { limitsOfHead, wantedByPlace, type WantedByPlace } from './wanted-of-head'

/** One head on one visit: everything that is known of it and what follows, put together once. */
export type Dossier = {
  readonly visit: VisitRecord
  /** "T-0412", or what it is called while it has no tag. */
  readonly label: string
  /** The other heads of its pair. */
  readonly mates: readonly Mate[]
  /**
   * The limits and steps of the day it was booked, and where its job or its casting asks for another limit, that one; every
   * rule about this head goes by them.
   */
  readonly settings: ShopSettings
  /** What the benches work to on it. */
  readonly wanted: Wanted
  /** The same, by who says it. */
  readonly wantedBy: WantedByPlace
  /** Those of today: names of stations, and what is not about one head. */
  readonly today: CurrentSettings
  /** The answers that count, oldest first. */
  readonly readings: readonly EffectiveReading[]
  /** Of them the newest at each step, kind and point, oldest first. */
  readonly newest: readonly EffectiveReading[]
  /** The newest plan of its pair; null: none yet. */
  readonly plan: PlanRecord | null
  readonly casting: CastingFacts
  readonly engine: EngineFacts
  readonly chambers: number
  /** Metal gone before this visit's cuts, in inches; null: not known. */
  readonly removedBeforeIn: number | null
  /** The same at both edges, and how it is known. */
  readonly metalGone: Result<MetalGone>
  /** What was gone when this head last left this shop, where it was cut here before; null: it was not, or nobody knows. */
  readonly earlier: (EarlierGone & { readonly job: string }) | null
  /** After these a cc reading is no repeat of one before it. */
  readonly changes: readonly ChamberChange[]
  /** What this head's repeats say of the spread of a reading, and those of the shop's other heads. */
  readonly ownRepeats: readonly OwnRepeats[]
  readonly otherRepeats: RepeatTally
  readonly facts: RouteFacts
  readonly route: readonly RouteStep[]
}

/** What a head's dossier needs beside its own visit: the shop's other repeats, and what its earlier visits took. */
export type Beside = Pick<Dossier, 'otherRepeats' | 'earlier'>

/** The dossier of a visit that was read: pure. */
export function dossierOf(
  visit: VisitRecord,
  ofItsDay: ShopSettings,
  today: CurrentSettings,
  { otherRepeats, earlier }: Beside,
): Dossier {
  // Where corners are touched is asked once: a head booked before the answer goes by it too.
  const ofShop = { ...ofItsDay, cornerInset: ofItsDay.cornerInset ?? today.values.cornerInset }
  const wantedBy = wantedByPlace(visit, ofShop, chambersOf(visit))
  const wanted = wantedOf(wantedBy)
  const settings = limitsOfHead(ofShop, wanted, chambersOf(visit))
  const readings = effectiveReadings(visit.readings)
  const casting = castingFactsOf(visit.head.casting, visit.head.chamberForm)
  const engine = engineFactsOf(visit.job.engine)
  const metalGone = metalGoneOf(visit, casting, readings, settings, earlier)
  const inputs = { visit, settings, readings, casting, engine, metalGone, wanted }
  const changes = chamberChanges({ readings, events: eventFacts(visit), orders: orderFacts(inputs) })
  const newest = newestReadings(readings, standingRepeats(readings, changes))
  const facts = routeFacts(inputs, newest)
  const plan = visit.pair.plans[0]
  return {
    visit,
    label: headLabel(visit),
    mates: matesOf(visit),
    settings,
    wanted,
    wantedBy,
    today,
    readings,
    newest: newest.toSorted((a, b) => a.seq - b.seq),
    changes,
    ownRepeats: repeatsOfHead(readings, changes),
    otherRepeats,
    plan: plan ? planRecordOf(plan) : null,
    casting,
    engine,
    chambers: facts.chambers,
    removedBeforeIn: metalGone.ok ? mostGoneIn(metalGone.value.gone) : null,
    metalGone,
    earlier,
    facts,
    route: computeRoute(facts),
  }
}

/** Dossiers of several visits, by their place on the job, in as many statements as that of one. */
export async function loadDossiers(reader: Reader, which: WhichVisits): Promise<Dossier[]> {
  const { visits, settingsOf, today, shopRepeats, cutBefore } = await readVisits(reader, which)
  const before = await earlierDossiers(
    reader,
    visits.flatMap((visit) => cutBefore(visit) ?? []),
  )
  return visits.map((visit) =>
    dossierOf(visit, settingsOf(visit).values, today, {
      otherRepeats: withoutOwn(shopRepeats, visit),
      earlier: earlierGone(before.get(cutBefore(visit) ?? '')),
    }),
  )
}

/** The visits on which these heads were cut last before, each with what it knows of its own earlier ones. */
async function earlierDossiers(reader: Reader, ids: readonly string[]): Promise<ReadonlyMap<string, Dossier>> {
  const found = ids.length === 0 ? [] : await loadDossiers(reader, { ids: [...new Set(ids)] })
  return new Map(found.map((dossier) => [dossier.visit.id, dossier]))
}

/** What was gone before that visit's cuts and what they took; null where one of the two is not known. */
function earlierGone(last: Dossier | undefined): Dossier['earlier'] {
  const edges = last && shopCutOf(cutFactsOf(last))?.edges
  if (!last?.metalGone.ok || !edges) return null
  const { gone, takenAsFlat } = last.metalGone.value
  const deepAtIntake = deckOf(last.visit, last.casting, last.settings).deepEdge === 'intake'
  const cut: Gone = {
    atIntakeEdgeIn: deepAtIntake ? edges.deepIn : edges.shallowIn,
    atExhaustEdgeIn: deepAtIntake ? edges.shallowIn : edges.deepIn,
    taperIn: 0,
  }
  return { gone: sumOfGone([gone, cut]), takenAsFlat, job: last.visit.job.number }
}

/** The shop's total without what this visit put into it; rounding never leaves less than nothing. */
function withoutOwn({ squaresCc2, degrees }: RepeatTally, { ccRepeats: own }: VisitRecord): RepeatTally {
  if (!own) return { squaresCc2, degrees }
  return { squaresCc2: Math.max(0, squaresCc2 - own.squaresCc2), degrees: Math.max(0, degrees - own.degrees) }
}

/** Refused as not found when there is no such visit. */
export async function loadDossier(reader: Reader, visitId: string): Promise<Dossier> {
  const [dossier] = await loadDossiers(reader, { ids: [visitId] })
  return dossier ?? noSuchHead()
}

export function noSuchHead(): never {
  throw new RefusedError({ code: 'not-found', message: 'Head not found.' })
}
