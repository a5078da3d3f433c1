import { openDaysBetween, wallClock } from '@/lib/core/finish/open-time'
import { queueTimes, type QueueTimes } from '@/lib/core/finish/queue-times'
import { samplesOf, type Samples } from '@/lib/core/finish/samples'
import type { FinishStepId, FinishWait } from '@/lib/core/finish/types'
import type { Station } from '@/lib/core/route/step-ids'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { TookRow } from '@/lib/data/finish-history'

/** How long things take in this shop: what a finish is drawn from. */
export type ShopRecord = {
  readonly ofStep: (stepId: FinishStepId) => Samples
  /** What heads take at a station, once it is their turn. */
  readonly queueAt: (station: Station) => QueueTimes
  readonly ofVendor: (vendorId: string) => Samples
  /** Who did this step last; null: nobody that is on record. */
  readonly vendorOf: (stepId: string) => { readonly id: string; readonly name: string } | null
  readonly ofWait: (code: FinishWait['code']) => Samples
  readonly clock: (at: Date) => number
  readonly workingDays: (from: Date, to: Date) => number
}

const calendarDays = (clock: (at: Date) => number, { fromAt, toAt }: Done): number =>
  Math.max(0, Math.floor(clock(toAt)) - Math.floor(clock(fromAt)))

type Done = TookRow & { readonly toAt: Date }
const isDone = (row: TookRow): row is Done => row.toAt !== null

/** Made once for a page; each thing is worked out when it is first asked for. */
export function shopRecord(rows: readonly TookRow[], settings: ShopSettings, timeZone: string): ShopRecord {
  const clock = wallClock(timeZone)
  const between = openDaysBetween(settings.calendar)
  const workingDays = (from: Date, to: Date): number => between(clock(from), clock(to))
  const done = rows.filter(isDone)
  const of = (kind: TookRow['kind'], key?: string): Done[] =>
    done.filter((row) => row.kind === kind && (key === undefined || row.key === key))
  const vendors = of('vendor')
  const waits = { answer: settings.answerDays, parts: settings.partsDays, hold: settings.holdDays }
  return {
    clock,
    workingDays,
    ofStep: once((stepId) =>
      samplesOf(
        of('step', stepId).map(({ fromAt, toAt }) => workingDays(fromAt, toAt)),
        settings.stepDays,
      ),
    ),
    queueAt: once((station) => {
      const here = of('step').filter((row) => row.at === station)
      const days = here
        .toSorted((a, b) => b.toAt.getTime() - a.toAt.getTime())
        .map(({ fromAt, freeAt, toAt }) => workingDays(freeAt !== null && freeAt > fromAt ? freeAt : fromAt, toAt))
      return queueTimes(samplesOf(days, settings.stepDays / 2), station)
    }),
    ofVendor: once((vendorId) =>
      samplesOf(
        vendors.filter(({ key }) => key === vendorId).map((row) => calendarDays(clock, row)),
        settings.turnaroundDays,
      ),
    ),
    vendorOf: once((stepId) => {
      const last = vendors.find(({ scope }) => scope.split(',').includes(stepId))
      return last ? { id: last.key, name: last.at } : null
    }),
    ofWait: once((code) => {
      const kind = code === 'bought' ? 'parts' : code
      return samplesOf(
        of(kind).map((row) => between0(clock, row)),
        waits[kind],
      )
    }),
  }
}

const between0 = (clock: (at: Date) => number, { fromAt, toAt }: Done): number =>
  Math.max(0, clock(toAt) - clock(fromAt))

function once<K, V>(work: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>()
  return (key) => {
    const found = known.get(key)
    if (found !== undefined) return found
    const made = work(key)
    known.set(key, made)
    return made
  }
}
