import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { RouteStep } from '@/lib/core/route/types'
import type { Station } from '@/lib/core/route/step-ids'
import { headName } from '@/lib/core/shop/tag-number'
import { db } from '@/lib/data/db'
import { heldInPairs, matesHeld, type HeldHead } from '@/lib/data/held-mates'
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
}

export type Queue = {
  /** Everything it waits for is done; do-again steps among them. By promise. */
  readonly ready: readonly QueueLine[]
  readonly started: readonly QueueLine[]
  /** Not yet: one line a head, with what it waits for. */
  readonly coming: readonly QueueLine[]
}

const canBeWorkedOn = (line: QueueLine): boolean =>
  line.step.waitsFor.length === 0 && ['expected', 'in house', 'finished'].includes(line.whereabouts)

const byPromise = (a: QueueLine, b: QueueLine): number =>
  Number(b.urgent) - Number(a.urgent) || (a.promiseOn ?? '9999').localeCompare(b.promiseOn ?? '9999')

/** What waits at a station, from the projection: two queries whatever the number of heads. */
export async function seeQueue(actor: Actor, station: Station): Promise<Queue> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const rows = await stationRows(client, station)
  const held = await heldInPairs(
    client,
    rows.map(({ row }) => row.visit.pairId),
  )
  const lines = rows.map((row) => queueLine(row, held)).sort(byPromise)
  const started = lines.filter((line) => line.step.state === 'started')
  const ready = lines.filter((line) => line.step.state !== 'started' && canBeWorkedOn(line))
  const listed = new Set([...started, ...ready].map((line) => line.visitId))
  const coming = lines.filter((line) => !listed.has(line.visitId))
  return { ready, started, coming: firstOfEach(coming) }
}

function queueLine({ row, step }: StationRow, held: readonly HeldHead[]): QueueLine {
  return {
    visitId: row.visit.id,
    headId: row.visit.headId,
    tag: headName(row.visit.head.tags, row.visit.job.number, row.visit.position),
    jobNumber: row.visit.job.number,
    casting: row.visit.head.casting?.name ?? 'casting not on record',
    promiseOn: row.visit.job.promiseOn,
    urgent: row.visit.job.urgent,
    whereabouts: row.visit.place?.whereabouts ?? 'expected',
    mateHeld: matesHeld(held, row.visit)[0]?.tag ?? '',
    step,
  }
}

function firstOfEach(lines: readonly QueueLine[]): QueueLine[] {
  const seen = new Set<string>()
  return lines.filter((line) => !seen.has(line.visitId) && seen.add(line.visitId))
}
