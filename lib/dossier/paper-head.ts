import type { CastingFacts } from '@/lib/core/casting/figures'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import type { EngineFacts } from '@/lib/core/engine/figures'
import type { RouteFacts, RouteStep } from '@/lib/core/route/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { ShopBlock } from '@/lib/core/spec/spec-sheet'
import type { Reader } from '@/lib/data/db'
import {
  effectiveReadings,
  newestReadings,
  planRecordOf,
  removedBeforeIn,
  type EffectiveReading,
} from '@/lib/data/facts'
import { castingFactsOf, engineFactsOf } from '@/lib/data/known-figures'
import { tagsOfPairs, type PaperVisit } from '@/lib/data/papers'
import { settingsOfVisits } from '@/lib/data/settings'
import { logoOf, type LogoColumns } from '@/lib/data/shop'
import { withRoute } from '@/lib/data/visits'
import { headLabel } from '@/lib/core/shop/tag-number'

/** One head as the papers see it: its facts, its route, the answers that stand, oldest first. */
export type PaperHead = {
  readonly visit: PaperVisit
  readonly tag: string
  readonly mateTags: readonly string[]
  readonly facts: RouteFacts
  readonly route: readonly RouteStep[]
  readonly readings: readonly EffectiveReading[]
  readonly plan: PlanRecord | null
  readonly casting: CastingFacts
  readonly engine: EngineFacts
  readonly chambers: number
  /** Gone before this visit's cuts, in inches; null: not known. */
  readonly removedBeforeIn: number | null
  readonly settings: ShopSettings
}

export async function paperHeads(reader: Reader, visits: readonly PaperVisit[]): Promise<PaperHead[]> {
  const settingsOf = await settingsOfVisits(reader, visits)
  const tags = await tagsOfPairs(
    reader,
    visits.map((visit) => visit.pairId),
  )
  return visits.map((visit) => {
    const mates = tags.filter((entry) => entry.pairId === visit.pairId && entry.visitId !== visit.id)
    return paperHead(
      visit,
      settingsOf(visit),
      mates.map((mate) => mate.tag),
    )
  })
}

function paperHead(visit: PaperVisit, settings: ShopSettings, mateTags: readonly string[]): PaperHead {
  const { facts, route } = withRoute(visit, settings)
  const all = effectiveReadings(visit.readings)
  const plan = visit.pair.plans[0]
  return {
    visit,
    tag: headLabel(visit),
    mateTags,
    facts,
    route,
    readings: newestReadings(all).sort((a, b) => a.seq - b.seq),
    plan: plan ? planRecordOf(plan) : null,
    casting: castingFactsOf(visit.head.casting, visit.head.chamberForm),
    engine: engineFactsOf(visit.job.engine),
    chambers: facts.chambers,
    removedBeforeIn: removedBeforeIn(visit, all),
    settings,
  }
}

type Addressed = { readonly name: string; readonly address: string; readonly phone: string }

/** Name, address and telephone of a shop or of a vendor. */
export const addressBlock = ({ name, address, phone }: Addressed): ShopBlock => ({
  name,
  lines: [...address.split('\n'), phone].map((line) => line.trim()).filter((line) => line !== ''),
})

/** What stands of the shop at the head of a paper that leaves it. */
export function shopBlock(shop: Addressed & LogoColumns): ShopBlock {
  const logo = logoOf(shop)
  return logo ? { ...addressBlock(shop), logo } : addressBlock(shop)
}
