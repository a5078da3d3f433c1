import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { RouteRules } from '@/lib/core/route/rules'
import { stationName } from '@/lib/core/route/rules-words'
import { stations, type Station } from '@/lib/core/route/step-ids'
import { dayIn } from '@/lib/core/shop/calendar'
import {
  finishedSince,
  longestWaits,
  namedVisits,
  openHolds,
  waiversSince,
  type NamedVisit,
} from '@/lib/data/back-room'
import { db, type Db } from '@/lib/data/db'
import { markedRepeats } from '@/lib/core/chamber/repeats'
import { effectiveReadings, newestReadings } from '@/lib/core/readings/effective'
import { namesOf } from '@/lib/data/people'
import { currentSettings } from '@/lib/data/settings'
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

  const { values: settings } = await currentSettings(client)
  const loads = await stationLoads(client, settings.rules)
  const holds = await openHolds(client)
  const waivers = (await waiversSince(client, since)).filter(thisMonth)
  const finished = await finishedSince(client, since)
  const nameOf = await namedVisits(
    client,
    [...holds, ...waivers, ...finished].map(({ visitId }) => visitId),
  )
  const names = await namesOf([...holds.map((hold) => hold.openedById), ...waivers.map((waiver) => waiver.byId)])
  return {
    zone: shop.timeZone,
    locale: shop.locale,
    month,
    loads,
    holds: holds.map(({ id, visitId, reason, openedAt, openedById }) => {
      const { tag, jobNumber } = nameOf(visitId)
      return { holdId: id, tag, jobNumber, reason, openedAt, by: names.get(openedById) ?? '' }
    }),
    waivers: waivers.map(({ id, visitId, what, reason, at, byId }) => {
      return { id, tag: nameOf(visitId).tag, what, reason, at, by: names.get(byId) ?? '' }
    }),
    outOfTolerance: missedTargets(finished, nameOf, settings.ccToleranceCc).filter(thisMonth),
  }
}

async function stationLoads(client: Db, rules: RouteRules): Promise<StationLoad[]> {
  const [counts, longest] = [await stationCounts(client), await longestWaits(client)]
  return stations.map((station) => ({
    station,
    label: stationName(station, rules),
    ready: counts.get(station)?.ready ?? 0,
    started: counts.get(station)?.started ?? 0,
    longest: longest.get(station) ?? null,
  }))
}

type Finished = Awaited<ReturnType<typeof finishedSince>>

/** Finished chambers that missed the target by more than the shop's tolerance; each chamber's newest answer counts. */
function missedTargets(
  found: Finished,
  nameOf: (visitId: string) => NamedVisit,
  toleranceCc: number,
): OutOfTolerance[] {
  return [...new Set(found.map(({ visitId }) => visitId))].flatMap((visitId) => {
    const { tag, targetCc, targetText, targetUnit } = nameOf(visitId)
    const sets = found.filter((entry) => entry.visitId === visitId).map((entry) => entry.set)
    const readings = effectiveReadings(sets)
    return newestReadings(readings, markedRepeats(readings))
      .filter(({ kind, value }) => kind === 'cc' && misses(value, targetCc, toleranceCc))
      .map(({ id, point, text, unit, takenAt }) => {
        return { id, tag, chamber: point, text, unit, at: takenAt, targetText, targetUnit }
      })
  })
}

/** Decimals are not exact in binary: 60.5 is still within 0.5 of 60. */
const rounding = 1e-9

const misses = (cc: number | null, targetCc: number | null, toleranceCc: number): boolean =>
  cc !== null && targetCc !== null && Math.abs(cc - targetCc) > toleranceCc + rounding
