import 'server-only'
import type { Reader } from './db'
import { readTables, there } from './tables'

const ofVisits = '"visitId" IN (SELECT "id" FROM "v")'
const tables = {
  Visit: '"id" IN (SELECT "id" FROM "v")',
  Job: '"id" IN (SELECT "jobId" FROM "v")',
  TagAssignment: '"headId" IN (SELECT "headId" FROM "v")',
  ReadingSet: `${ofVisits} AND "stepId" = 'flow'`,
  Reading: `"setId" IN (SELECT "id" FROM "ReadingSet" WHERE ${ofVisits} AND "stepId" = 'flow')`,
}

/** The newest of the shop's own cuts of one casting whose heads were flowed, with their runs: two statements. */
export async function flowedCuts(reader: Reader, castingId: string) {
  const cuts = await reader.shopCut.findMany({
    where: {
      castingId,
      deepIn: { not: null },
      shallowIn: { not: null },
      visit: { readings: { some: { stepId: 'flow' } } },
    },
    select: { visitId: true, shallowIn: true, deepIn: true },
    orderBy: { seq: 'desc' },
    take: 20,
  })
  if (cuts.length === 0) return []
  const marks = cuts.map(() => '?').join(', ')
  const scope = `"v" AS (SELECT "id", "headId", "jobId" FROM "Visit" WHERE "id" IN (${marks}))`
  const rows = await readTables(reader, { sql: scope, params: cuts.map(({ visitId }) => visitId) }, tables)
  return cuts.map(({ visitId, shallowIn, deepIn }) => {
    const visit = there(rows.Visit.find(({ id }) => id === visitId))
    const sets = rows.ReadingSet.filter((set) => set.visitId === visitId).sort((a, b) => a.eventSeq - b.eventSeq)
    return {
      shallowIn,
      deepIn,
      visit: {
        headId: visit.headId,
        position: visit.position,
        job: there(rows.Job.find(({ id }) => id === visit.jobId)),
        head: { tags: rows.TagAssignment.filter(({ headId }) => headId === visit.headId) },
        readings: sets.map((set) => ({ ...set, points: rows.Reading.filter(({ setId }) => setId === set.id) })),
      },
    }
  })
}
