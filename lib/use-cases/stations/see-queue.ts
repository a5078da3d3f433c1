import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { RouteStep } from '@/lib/core/route/types'
import type { Station } from '@/lib/core/route/step-ids'
import { headName } from '@/lib/core/shop/tag-number'
import { lackText } from '@/lib/words/lacks'
import { db } from '@/lib/data/db'
import { stationRows, type StationRow } from '@/lib/data/queue'

export type QueueLine = {
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
  readonly casting: string
  readonly promiseOn: string | null
  readonly urgent: boolean
  readonly whereabouts: string
  /** "T-0412"; '' when its mate is not held. */
  readonly mateHeld: string
  readonly step: RouteStep
  /** What is out of tolerance on the head, a sentence each. */
  readonly out: readonly string[]
}

export type Queue = {
  /** Everything it waits for is done; do-again steps among them. By promise. */
  readonly ready: readonly QueueLine[]
  readonly started: readonly QueueLine[]
  /** Not yet: one line a head, with what it waits for. */
  readonly coming: readonly QueueLine[]
  /** Whether another page follows. */
  readonly more: boolean
}

/** One page of a station's queue: one statement whatever the number of heads. */
export async function seeQueue(actor: Actor, station: Station, page = 1): Promise<Queue> {
  must(allow(actor, 'job.see'))
  const { rows, more } = await stationRows(await db(), station, page)
  const linesOf = (queue: string) => rows.filter((row) => row.queue === queue).map(queueLine)
  return { ready: linesOf('ready'), started: linesOf('started'), coming: linesOf('coming'), more }
}

const worn = (tag: string | null) => (tag === null ? [] : [{ number: tag }])

function queueLine(row: StationRow): QueueLine {
  const { visitId, headId, jobNumber, position, promiseOn, urgent, step, out } = row
  return {
    visitId,
    headId,
    tag: headName(worn(row.tag), jobNumber, position),
    jobNumber,
    casting: row.casting ?? 'casting not on record',
    promiseOn,
    urgent,
    whereabouts: row.whereabouts ?? 'expected',
    mateHeld: row.matePosition === null ? '' : headName(worn(row.mateTag), jobNumber, row.matePosition),
    step,
    out: out.map(lackText),
  }
}
