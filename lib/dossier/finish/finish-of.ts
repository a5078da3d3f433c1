import { expectedFinish } from '@/lib/core/finish/expected-finish'
import type { Finish, FinishStep, FinishWait, QueueAhead } from '@/lib/core/finish/types'
import { dayIn } from '@/lib/core/shop/calendar'
import { stations, type Station, type StepId } from '@/lib/core/route/step-ids'
import type { Whereabouts } from '@/lib/core/route/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { OpenRow, QueuedRow } from '@/lib/data/finish-history'
import type { ShopRecord } from './shop-record'

/** A head whose finish is asked for. */
export type HeadToFinish = {
  readonly id: string
  readonly whereabouts: Whereabouts
  readonly bookedAt: Date
  readonly urgent: boolean
  readonly promiseOn: string | null
}

export type FinishShop = {
  readonly now: Date
  readonly timeZone: string
  readonly settings: ShopSettings
  readonly record: ShopRecord
  readonly queued: readonly QueuedRow[]
}

const ready: readonly Whereabouts[] = ['released', 'handed over', 'returned as is', 'scrapped', 'taken off']

/** When this head will be ready, from its open steps and what it waits for; null: it is ready, or has left. */
export function finishOf(head: HeadToFinish, rows: readonly OpenRow[], shop: FinishShop): Finish | null {
  if (ready.includes(head.whereabouts)) return null
  const { now, timeZone, record, settings } = shop
  const away = rows.find(({ kind }) => kind === 'away')
  const steps = stepsLeft(rows, away, shop)
  const at = record.clock(now)
  const waits = waitsOf(head, rows, steps, shop)
  const isHeldUp = away !== undefined || waits.some(({ beforeStep }) => beforeStep === 0)
  const found = expectedFinish({
    seed: head.id,
    today: dayIn(timeZone, now),
    dayPart: at - Math.floor(at),
    calendar: settings.calendar,
    steps,
    elapsedDays: isHeldUp ? 0 : record.workingDays(sinceOf(head, rows), now),
    waits,
    queues: queuesOf(head, rows, shop),
  })
  return found.ok ? found.value : null
}

/** Since when it is at its first step: since the last one was done or it came back, else since it was booked. */
const sinceOf = (head: HeadToFinish, rows: readonly OpenRow[]): Date =>
  rows.reduce((last, { kind, since }) => (kind === 'since' && since && since > last ? since : last), head.bookedAt)

const isOutside = ({ more }: OpenRow): boolean => more === 'outside'

/** The vendor who has it first, then the steps in their order; steps for one vendor in a row are one trip. */
function stepsLeft(rows: readonly OpenRow[], away: OpenRow | undefined, { record, now }: FinishShop): FinishStep[] {
  const scope = away?.scope.split(',') ?? []
  const open = rows.filter(({ kind, key }) => kind === 'step' && key !== 'hand-over' && !scope.includes(key))
  const steps: FinishStep[] = []
  if (away) {
    const daysOut = Math.max(0, Math.floor(record.clock(now)) - Math.floor(record.clock(away.since ?? now)))
    const took = record.ofVendor(away.key)
    steps.push({ at: 'vendor', vendor: away.what, took, promisedOn: away.more, daysOut })
  }
  open.forEach((row, number) => {
    if (!isOutside(row)) {
      const stepId = row.key as StepId
      steps.push({ at: 'here', stepId, station: row.more as Station, took: record.ofStep(stepId) })
      return
    }
    if (number > 0 && isOutside(open[number - 1] ?? row)) return
    const vendor = record.vendorOf(row.key)
    steps.push(
      { at: 'here', stepId: 'send', station: null, took: record.ofStep('send') },
      {
        ...{ at: 'vendor', vendor: vendor?.name ?? '', promisedOn: null, daysOut: null },
        took: record.ofVendor(vendor?.id ?? ''),
      },
    )
  })
  return [...steps, { at: 'here', stepId: 'release', station: null, took: record.ofStep('release') }]
}

function waitsOf(
  head: HeadToFinish,
  rows: readonly OpenRow[],
  steps: readonly FinishStep[],
  { record, now }: FinishShop,
): FinishWait[] {
  const atNow = record.clock(now)
  const atVendor = steps[0]?.at === 'vendor' && steps[0].daysOut !== null ? 1 : 0
  const wait = (code: FinishWait['code'], row: OpenRow, beforeStep: number): FinishWait => ({
    ...{ code, what: row.what, took: record.ofWait(code), promisedOn: row.more, beforeStep },
    elapsedDays: Math.max(0, atNow - record.clock(row.since ?? now)),
  })
  const waits = rows.flatMap((row): FinishWait[] => {
    if (row.kind === 'finding') return [wait('answer', row, atVendor)]
    if (row.kind === 'hold') return [wait('hold', row, atVendor)]
    if (row.kind === 'on order') return [wait('bought', row, 0)]
    if (row.kind !== 'wait') return []
    const place = steps.findIndex((step) => step.at === 'here' && step.stepId === row.key)
    return [wait('parts', row, Math.max(atVendor, place))]
  })
  const isUnordered = head.whereabouts === 'on order' && !waits.some(({ code }) => code === 'bought')
  if (!isUnordered) return waits
  return [
    ...waits,
    { code: 'bought', what: '', took: record.ofWait('bought'), elapsedDays: 0, promisedOn: null, beforeStep: 0 },
  ]
}

/** Heads before this one at each station it still goes to: urgent ones first, then by promise; not itself. */
function queuesOf(
  head: HeadToFinish,
  rows: readonly OpenRow[],
  { queued, record }: FinishShop,
): Partial<Record<Station, QueueAhead>> {
  const mine = rows.filter(({ kind }) => kind === 'step')
  const queues: Partial<Record<Station, QueueAhead>> = {}
  for (const station of stations) {
    if (station === 'outside' || !mine.some(({ more }) => more === station)) continue
    const here = mine.some(({ more, scope }) => more === station && (scope === 'ready' || scope === 'started'))
    const before = queued
      .filter((row) => row.station === station && goesBefore(row, head))
      .reduce((sum, { heads }) => sum + heads, 0)
    queues[station] = { heads: Math.max(0, before - (here ? 1 : 0)), times: record.queueAt(station) }
  }
  return queues
}

const far = '9999'

/** One with the same promise counts as before it: nobody knows which is taken first. */
function goesBefore(row: QueuedRow, head: HeadToFinish): boolean {
  if (row.urgent !== head.urgent) return row.urgent
  return (row.promiseOn ?? far) <= (head.promiseOn ?? far)
}
