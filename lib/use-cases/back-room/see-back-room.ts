import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { stationName } from '@/lib/core/route/rules-words'
import { stations, type Station } from '@/lib/core/route/step-ids'
import { dayIn } from '@/lib/core/shop/calendar'
import { finishedSince, heldHeads, longestWaits, waiversSince } from '@/lib/data/back-room'
import { db, type Db } from '@/lib/data/db'
import { effectiveReadings, newestReadings } from '@/lib/core/readings/effective'
import { namesOf } from '@/lib/data/people'
import { currentRules, currentSettings } from '@/lib/data/settings'
import { stationCounts } from '@/lib/data/queue'
import { shopOf } from '@/lib/data/shop'

export type StationLoad = {
  readonly station: Station
  readonly label: string
  readonly ready: number
  readonly started: number
  /** The head on which nothing has been done for longest; null when nothing waits here. */
  readonly longest: { readonly tag: string; readonly label: string; readonly since: Date } | null
}

export type OutOfTolerance = {
  readonly id: string
  readonly tag: string
  readonly chamber: string
  readonly text: string
  readonly unit: string
  readonly targetText: string
  readonly targetUnit: string
  readonly at: Date
}

const longestMonthMs = 32 * 24 * 60 * 60 * 1000

/** What waits, what is held, and what this month let pass. */
export async function seeBackRoom(actor: Actor, now: Date) {
  must(allow(actor, 'back-room.see'))
  const client = await db()
  const shop = await shopOf(client)
  const month = dayIn(shop.timeZone, now).slice(0, 7)
  const thisMonth = (line: { at: Date }) => dayIn(shop.timeZone, line.at).startsWith(month)
  const since = new Date(now.getTime() - longestMonthMs)

  const loads = await stationLoads(client)
  const holds = await heldHeads(client)
  const waivers = (await waiversSince(client, since)).filter(thisMonth)
  const outOfTolerance = (await missedTargets(client, since)).filter(thisMonth)
  const names = await namesOf([...holds.map((hold) => hold.openedById), ...waivers.map((waiver) => waiver.byId)])
  return {
    zone: shop.timeZone,
    locale: shop.locale,
    month,
    loads,
    holds: holds.map((hold) => ({ ...hold, by: names.get(hold.openedById) ?? '' })),
    waivers: waivers.map((waiver) => ({ ...waiver, by: names.get(waiver.byId) ?? '' })),
    outOfTolerance,
  }
}

async function stationLoads(client: Db): Promise<StationLoad[]> {
  const [counts, longest, rules] = [await stationCounts(client), await longestWaits(client), await currentRules(client)]
  return stations.map((station) => ({
    station,
    label: stationName(station, rules),
    ready: counts.get(station)?.ready ?? 0,
    started: counts.get(station)?.started ?? 0,
    longest: longest.get(station) ?? null,
  }))
}

/** Finished chambers that missed the target by more than the shop's tolerance; each chamber's newest answer counts. */
async function missedTargets(client: Db, since: Date): Promise<OutOfTolerance[]> {
  const { values } = await currentSettings(client)
  const found = await finishedSince(client, since)
  const byVisit = new Map(found.map((entry) => [entry.visitId, entry]))
  return [...byVisit.values()].flatMap(({ visitId, tag, target }) => {
    const sets = found.filter((entry) => entry.visitId === visitId).map((entry) => entry.set)
    return newestReadings(effectiveReadings(sets))
      .filter(({ kind, value }) => kind === 'cc' && misses(value, target.targetCc, values.ccToleranceCc))
      .map(({ id, point, text, unit, takenAt }) => ({
        id,
        tag,
        chamber: point,
        text,
        unit,
        at: takenAt,
        targetText: target.targetText,
        targetUnit: target.targetUnit,
      }))
  })
}

/** Decimals are not exact in binary: 60.5 is still within 0.5 of 60. */
const rounding = 1e-9

const misses = (cc: number | null, targetCc: number | null, toleranceCc: number): boolean =>
  cc !== null && targetCc !== null && Math.abs(cc - targetCc) > toleranceCc + rounding
