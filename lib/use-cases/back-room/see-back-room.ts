import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { RouteRules } from '@/lib/core/route/rules'
import { stationName } from '@/lib/core/route/rules-words'
import { stations, type Station } from '@/lib/core/route/step-ids'
import { addDays, dayIn, startOfDay } from '@/lib/core/shop/calendar'
import {
  backRoomLists,
  longestWaits,
  roundingCc,
  type MeasuredSet,
  type NamedVisit,
  type Period,
} from '@/lib/data/back-room'
import { db, type Db } from '@/lib/data/db'
import { markedRepeats } from '@/lib/core/chamber/repeats'
import { effectiveReadings, newestReadings } from '@/lib/core/readings/effective'
import { currentSettings } from '@/lib/data/settings'
import { stationCounts } from '@/lib/data/queue'
import { shopOf } from '@/lib/data/shop'
import { rowsByOwner } from '@/lib/data/tables'

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

/** The calendar month of a moment in the shop's time zone, from its first moment to that of the next. */
function monthOf(zone: string, now: Date): Period & { readonly name: string } {
  const name = dayIn(zone, now).slice(0, 7)
  const next = addDays(`${name}-01`, longestMonthDays).slice(0, 7)
  return { name, from: startOfDay(zone, `${name}-01`), to: startOfDay(zone, `${next}-01`) }
}
const longestMonthDays = 31

/** What waits, what is held, and what this month let pass. */
export async function seeBackRoom(actor: Actor, now: Date, page = 1) {
  must(allow(actor, 'back-room.see'))
  const client = await db()
  const shop = await shopOf(client)
  const month = monthOf(shop.timeZone, now)
  const { values: settings } = await currentSettings(client)
  const { ccToleranceCc: toleranceCc } = settings
  const loads = await stationLoads(client, settings.rules)
  const { nameOf, by, ...lists } = await backRoomLists(client, { month, toleranceCc, page })
  return {
    zone: shop.timeZone,
    locale: shop.locale,
    month: month.name,
    loads,
    holds: lists.holds.map(({ id, visitId, reason, openedAt }) => {
      const { tag, jobNumber } = nameOf(visitId)
      return { holdId: id, tag, jobNumber, reason, openedAt, by: by(id) }
    }),
    waivers: lists.waivers.map(({ id, visitId, what, reason, at }) => {
      return { id, tag: nameOf(visitId).tag, what, reason, at, by: by(id) }
    }),
    outOfTolerance: missedTargets(lists.measurings, nameOf, toleranceCc).filter(
      ({ at }) => at >= month.from && at < month.to,
    ),
    more: lists.more,
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

type Measurings = { readonly ids: readonly string[]; readonly sets: readonly MeasuredSet[] }

/**
 * The chambers of these measurings that missed the target by more than the shop's tolerance, in the measurings' order; each
 * chamber's newest answer counts, and stands with the measuring in which it was typed.
 */
function missedTargets(
  { ids, sets }: Measurings,
  nameOf: (visitId: string) => NamedVisit,
  toleranceCc: number,
): OutOfTolerance[] {
  const setOfPoint = new Map(sets.flatMap((set) => set.points.map((point) => [point.id, set.id] as const)))
  const missed = [...rowsByOwner(sets, ({ visitId }) => visitId ?? '')].flatMap(([visitId, own]) => {
    const { tag, targetCc, targetText, targetUnit } = nameOf(visitId)
    const readings = effectiveReadings(own)
    return newestReadings(readings, markedRepeats(readings))
      .filter(({ kind, value }) => kind === 'cc' && misses(value, targetCc, toleranceCc))
      .map(({ id, point, text, unit, takenAt }) => {
        return { id, tag, chamber: point, text, unit, at: takenAt, targetText, targetUnit }
      })
  })
  const bySet = rowsByOwner(missed, ({ id }) => setOfPoint.get(id) ?? '')
  return ids.flatMap((id) => bySet.get(id) ?? [])
}

const misses = (cc: number | null, targetCc: number | null, toleranceCc: number): boolean =>
  cc !== null && targetCc !== null && Math.abs(cc - targetCc) > toleranceCc + roundingCc
