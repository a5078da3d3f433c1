import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { keyIn } from '@/lib/core/route/keys'
import { comesToday } from '@/lib/core/route/comes-today'
import type { HeadMark } from '@/lib/core/route/head-marks'
import type { RouteStep, Whereabouts } from '@/lib/core/route/types'
import type { Station, StepKey } from '@/lib/core/route/step-ids'
import { dayIn } from '@/lib/core/shop/calendar'
import { saidDay, type SaidDay } from '@/lib/core/shop/when-words'
import { headName } from '@/lib/core/shop/tag-number'
import { db } from '@/lib/data/db'
import { reasonText, waitText } from '@/lib/words/route'
import { stationRows, type StationRow } from '@/lib/data/queue'

export type QueueLine = {
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
  /** Rack location; '' where nobody said. */
  readonly place: string
  readonly promised: SaidDay | null
  readonly step: StepKey & Pick<RouteStep, 'label'>
  /** The one thing worth knowing before opening it, beside what is odd. */
  readonly note: string
  /** What is odd about the head, the gravest first. */
  readonly marks: readonly HeadMark[]
}

export type Queue = {
  /** Everything it waits for is done; do-again steps among them. By promise. */
  readonly ready: readonly QueueLine[]
  readonly started: readonly QueueLine[]
  /** Not yet, one line a head, with what it waits for: those that are likely to be ready today, and the others. */
  readonly today: readonly QueueLine[]
  readonly later: readonly QueueLine[]
  /** Whether another page follows. */
  readonly more: boolean
}

/** One page of a station's queue: one statement whatever the number of heads. */
export async function seeQueue(actor: Actor, station: Station, page = 1, now = new Date()): Promise<Queue> {
  must(allow(actor, 'job.see'))
  const { rows, more } = await stationRows(await db(), station, page)
  const linesOf = (queue: string, wanted: (row: StationRow) => boolean = () => true) =>
    rows.filter((row) => row.queue === queue && wanted(row)).map(queueLine)
  const isToday = (row: StationRow) =>
    comesToday({ ...row, ...row.step, where: whereOf(row) }, dayIn(row.timeZone, now))
  return {
    ready: linesOf('ready'),
    started: linesOf('started'),
    today: linesOf('coming', isToday),
    later: linesOf('coming', (row) => !isToday(row)),
    more,
  }
}

const worn = (tag: string | null) => (tag === null ? [] : [{ number: tag }])
const whereOf = ({ whereabouts }: StationRow): Whereabouts => (whereabouts as Whereabouts | null) ?? 'expected'

function queueLine(row: StationRow): QueueLine {
  const { visitId, headId, jobNumber, position, promiseOn, locale, rackPlace, step } = row
  return {
    visitId,
    headId,
    tag: headName(worn(row.tag), jobNumber, position),
    jobNumber,
    place: rackPlace,
    promised: promiseOn === null ? null : saidDay(promiseOn, locale),
    step: { ...keyIn(step), label: step.label },
    note: noteOf(row),
    marks: marksOf(row),
  }
}

function noteOf(row: StationRow): string {
  const { reason, waitsFor } = row.step
  const whereabouts = whereOf(row)
  if (reason !== null) return reasonText(reason)
  if (whereabouts === 'away') return 'away at a vendor'
  if (whereabouts === 'waiting for parts') return 'waiting for parts'
  const first = waitsFor.filter(({ code }) => code !== 'hold')
  if (first.length > 0) return `after ${first.slice(0, 2).map(waitText).join(', ')}`
  return row.casting ?? 'casting not on record'
}

function marksOf(row: StationRow): HeadMark[] {
  const { holdReason, comebackOfId, comebackCause, comebackPays, findingWhat, matePosition } = row
  const marks: (HeadMark | null)[] = [
    row.urgent ? { code: 'urgent' } : null,
    holdReason === null ? null : { code: 'held', reason: holdReason },
    ...row.out.map((lack) => ({ code: 'out', lack }) as const),
    ...row.rework.map((rework) => ({ code: 'rework', rework }) as const),
    comebackOfId === null ? null : { code: 'comeback', cause: comebackCause, pays: comebackPays },
    findingWhat === null ? null : { code: 'finding', what: findingWhat },
    matePosition === null ? null : { code: 'mate-held', tag: headName(worn(row.mateTag), row.jobNumber, matePosition) },
  ]
  return marks.filter((mark) => mark !== null)
}
