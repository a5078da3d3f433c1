import type Database from 'better-sqlite3'
import { queuePlace } from '@/lib/core/route/station-queue'
import { oneOfEach, valvePoint, valvesOf } from '@/lib/core/readings/valves'
import type { Whereabouts } from '@/lib/core/route/types'
import { emptyPlanInputs, plainSpecSheet, planOfNoCut, stepWaitingFor } from './filled-json'
import { plainSqlite } from './plain-sqlite'

type Row = Readonly<Record<string, string | number | boolean | Date | null>>
/** A table → what it holds of one head, which came at this time. */
type Rows = Readonly<Record<string, (n: string, at: Date, index: number) => readonly Row[]>>

const dayMs = 24 * 60 * 60 * 1000
const byId = 'person'
const steps = ['wash-in', 'chambers', 'angle-cut', 'flat-cut', 'final'] as const
const places: readonly Whereabouts[] = ['in house', 'held', 'away', 'waiting for parts', 'waiting for an answer']

/** Every tenth of the first thousand heads is on the floor, in turn at each of the places; all others were handed over. */
const whereIs = (index: number): Whereabouts =>
  index % 10 === 0 && index < 1000 ? (places[(index / 10) % places.length] ?? 'in house') : 'handed over'
/** A row that only a head which was handed over has. */
const gone = (index: number, row: Row): readonly Row[] => (whereIs(index) === 'handed over' ? [row] : [])
const isOut = (index: number): boolean => whereIs(index) === 'away'
const unless = (open: boolean, at: Date): Date | null => (open ? null : at)

const chambers = stepWaitingFor([
  { code: 'step', step: { stepId: 'chambers', occurrence: '', orderId: null }, label: 'Chambers' },
])
const nothing = stepWaitingFor([])

const job: Rows = {
  Customer: (n, at) => [{ id: `c${n}`, createdAt: at }],
  CustomerContact: (n, _, index) => [
    {
      ...{ customerId: `c${n}`, name: `Customer ${n}`, nameLower: `customer ${n}`, phone: `555 ${n}` },
      ...{ phoneDigits: `555${index}`, email: '', address: '' },
    },
  ],
  CustomerText: (n, _, index) => [{ customerId: `c${n}`, text: ` customer ${n} customer${n} 555${index}` }],
  Job: (n, at) => [
    {
      ...{ id: `j${n}`, number: `25-${n}`, customerId: `c${n}`, preset: 'refresh', byId, createdAt: at },
      ...{ promiseOn: at.toISOString().slice(0, 10), partsPlace: '', note: '' },
    },
  ],
  Engine: (n) => [{ id: `e${n}`, jobId: `j${n}`, label: '', layout: 'v' }],
  EngineFigure: (n) => [{ id: `e${n}`, engineId: `e${n}`, key: 'boreIn', value: 4, text: '4.000', unit: 'in' }],
  Pair: (n) => [{ id: `p${n}`, jobId: `j${n}` }],
  PlanVersion: (n, at) => [
    {
      ...{ id: `p${n}`, pairId: `p${n}`, number: 1, kind: 'none', reason: '' },
      ...{ inputs: emptyPlanInputs, results: planOfNoCut },
      ...{ settingsVersion: 0, createdAt: at, byId },
    },
  ],
  PlanAcceptance: (n, at) => [{ id: `a${n}`, planId: `p${n}`, by: 'customer', how: 'phone', at, recordedById: byId }],
  CallEntry: (n, at) => [{ id: `l${n}`, jobId: `j${n}`, at, byId, text: 'rang' }],
  Payment: (n, at) => [{ id: `y${n}`, jobId: `j${n}`, kind: 'deposit', minor: 5000, how: 'card', at, byId }],
  CustomerLink: (n, at) => [
    { id: `k${n}`, jobId: `j${n}`, tokenHash: `hash ${n}`, createdAt: at, expiresAt: at, byId },
  ],
}

const head: Rows = {
  Head: (n, at, index) => [
    {
      ...{ id: `h${n}`, stamp: '', marks: `MK-${index}`, marksLower: `mk-${index}`, material: 'iron' },
      ...{ chamberForm: 'as-cast', newThicknessText: '', note: '', createdAt: at },
    },
  ],
  HeadText: (n, _, index) => [{ headId: `h${n}`, text: ` mk ${index} mk${index}` }],
  TagAssignment: (n, at, index) => [
    {
      ...{ id: `t${n}`, headId: `h${n}`, number: `T-${10_000 + index}`, sortNumber: 10_000 + index },
      ...{ activeNumber: `T-${10_000 + index}`, from: at },
    },
  ],
  Visit: (n, at) => [
    {
      ...{ id: `v${n}`, jobId: `j${n}`, headId: `h${n}`, pairId: `p${n}`, position: 1, source: 'customer', used: true },
      ...{ side: '', cameWith: '', ownedBy: '', rackPlace: '', presentText: '', presentUnit: '' },
      ...{ targetCc: 62, targetText: '62', targetUnit: 'cc', createdAt: at },
    },
  ],
  VisitPlace: (n, at, index) => [{ visitId: `v${n}`, whereabouts: whereIs(index), changedAt: at }],
  OrderedLine: (n, at) => [
    { id: `o${n}`, visitId: `v${n}`, work: 'flat-cut', note: '', createdAt: at },
    { id: `c${n}`, visitId: `v${n}`, work: 'chambers', note: '', createdAt: at },
  ],
  PriceLine: (n, at) => [
    {
      ...{ id: `i${n}`, jobId: `j${n}`, visitId: `v${n}`, text: 'Flat cut', unitMinor: 9500 },
      quantityThousandths: 1000,
      ...{ taxMillionths: 0, createdAt: at },
    },
  ],
}

const work: Rows = {
  RouteStep: (n, _, index) =>
    steps.map((stepId, place) => {
      const where = whereIs(index)
      const state = where === 'handed over' || place === 0 ? 'done' : place === 1 ? 'ready' : 'to do'
      const waits = place > 1
      return {
        ...{ visitId: `v${n}`, stepId, occurrence: '', orderKey: '', place, label: stepId, state },
        station: place === 0 ? 'wash' : 'measuring-bench',
        queue: queuePlace({ state, waitsFor: waits ? [{ code: 'said', text: 'Chambers' }] : [] }, where),
        detail: waits ? chambers : nothing,
      }
    }),
  VisitEvent: (n, at) => [
    { visitId: `v${n}`, kind: 'tick', stepId: 'wash-in', occurrence: '', note: '', at, byId, settingsVersion: 0 },
  ],
  ReadingSet: (n, at, index) => [
    {
      ...{ id: `s${n}`, visitId: `v${n}`, stepId: 'finished', occurrence: '', eventSeq: index, conditions: '{}' },
      ...{ takenAt: at, recordedAt: at, byId },
    },
    {
      ...{ id: `q${n}`, visitId: `v${n}`, stepId: 'heights', occurrence: '', eventSeq: index, conditions: '{}' },
      ...{ takenAt: at, recordedAt: at, byId },
    },
  ],
  Finding: (n, at, index) => {
    const open = whereIs(index) === 'waiting for an answer'
    return [
      {
        ...{ id: `f${n}`, visitId: `v${n}`, what: 'a crack', addsWork: '', reportedAt: at, reportedById: byId },
        ...{ askedHow: '', answer: open ? null : 'yes', answeredAt: unless(open, at), answeredBy: '' },
      },
    ]
  },
  PartsWait: (n, at, index) => [
    {
      ...{ id: `w${n}`, visitId: `v${n}`, stepId: 'final', occurrence: '', what: 'valves', fromWhom: 'us' },
      ...{ openedAt: at, openedById: byId, arrivedAt: unless(whereIs(index) === 'waiting for parts', at) },
    },
  ],
  Hold: (n, at, index) => [
    {
      ...{ id: `d${n}`, visitId: `v${n}`, reason: 'bent', openedAt: at, openedById: byId, decisionNote: '' },
      ...{ customerYes: '', decidedAt: unless(whereIs(index) === 'held', at) },
    },
  ],
  Waiver: (n, at) => [
    {
      ...{ id: `w${n}`, visitId: `v${n}`, stepId: 'final', occurrence: '', gap: 'cc', what: 'cc', reason: 'old' },
      ...{ touchesCustomer: false, at, byId },
    },
  ],
  File: (n, at) => [{ sha256: `sha ${n}`, size: 1, type: 'image/webp', createdAt: at }],
  Photo: (n, at) => [
    {
      ...{ id: `x${n}`, visitId: `v${n}`, stepId: 'wash-in', sha256: `sha ${n}`, widthPx: 4, heightPx: 3 },
      ...{ caption: '', at, byId },
    },
  ],
}

const chamberPoints = ['1', '2', '3', '4'].map((point) => {
  return { set: 's', kind: 'cc', point, value: 64, text: '64.0', unit: 'cc' }
})
const inches = ['seat-width', 'sink', 'stem-height', 'installed-height', 'guide-clearance', 'runout']
const valvePoints = inches.flatMap((kind) =>
  valvesOf(4, oneOfEach).map((valve) => {
    return { set: 'q', kind, point: valvePoint(valve), value: 0.05, text: '0.050', unit: 'in' }
  }),
)
const points = [...chamberPoints, ...valvePoints]

/** All four chambers out of tolerance at the last measuring; the rest at the valves. There are millions of them: no spread. */
const readings =
  (each: number): NonNullable<Rows[string]> =>
  (n) =>
    points.slice(0, each).map(({ set, kind, point, value, text, unit }, at) => {
      return { id: `r${n}-${at}`, setId: `${set}${n}`, kind, point, value, text, unit, reason: '' }
    })

const outside: Rows = {
  OutsideOrder: (n, at) => [
    {
      ...{ id: `o${n}`, number: `O-9${n}`, vendorId: 'vendor', instructions: '', scope: 'angle-cut', freight: '' },
      ...{ finishesToSize: true, tracking: '', createdAt: at, byId, sentAt: at },
    },
  ],
  OutsidePromise: (n, at) => [{ id: `o${n}`, orderId: `o${n}`, promisedOn: '2026-03-01', note: '', at, byId }],
  OutsideOrderVisit: (n, at, index) => [
    {
      ...{ id: `z${n}`, orderId: `o${n}`, visitId: `v${n}`, angleIn: 0.02, flatIn: 0, comesWith: '', confirmed: '' },
      ...{ receivedAt: unless(isOut(index), at), marksTyped: '', marksRead: '', redoCost: '' },
    },
  ],
  SupplyOrder: (n, at, index) => [
    { id: `s${n}`, number: `S-9${n}`, vendorId: 'vendor', createdAt: at, byId, arrivedAt: unless(isOut(index), at) },
  ],
  SupplyPromise: (n, at) => [{ id: `s${n}`, orderId: `s${n}`, promisedOn: '2026-03-01', note: '', at, byId }],
  SupplyLine: (n) => [{ id: `s${n}`, orderId: `s${n}`, kind: 'part', what: 'valves', quantity: 8, arrived: 0 }],
  SupplyHead: (n, at) => [{ id: `s${n}`, lineId: `s${n}`, visitId: `v${n}`, arrivedAt: at }],
  Release: (n, at, index) =>
    gone(index, {
      ...{ id: `r${n}`, visitId: `v${n}`, revision: 1, facts: plainSpecSheet, pdfSha256: '', at, byId, reason: '' },
    }),
  HandOver: (n, at, index) =>
    gone(index, { visitId: `v${n}`, takenBy: 'customer', side: '', partsBack: '', note: '', at, byId }),
  AuditEntry: (n, at) => [
    {
      ...{ at, actorId: byId, action: 'step.tick', subject: 'step', subjectId: 'wash-in', jobId: `j${n}` },
      ...{ visitId: `v${n}`, changes: '{}', settingsVersion: 0 },
    },
  ],
  Operation: (n, at) => [{ id: `o${n}`, actorId: byId, hash: '', result: '{}', at }],
}

const vendor: Row = { id: 'vendor', name: 'Far Cutters', phone: '', email: '', address: '', services: '' }

/**
 * So many heads, each with a job of its own and all that a shop writes of it. They are written past the client in one
 * transaction: 2,000 heads have about 90,000 rows. `from`: the first head's number; `each`: readings of a head.
 */
export const fillShop = (url: string, from: number, count: number, now: Date, each = 2): void =>
  plainSqlite(url, (file) => fillHeads(file, from, count, now, each))

/** The same, into a database that is open. */
export function fillHeads(file: Database.Database, from: number, count: number, now: Date, each: number): void {
  const insert = (table: string, rows: readonly Row[]): void => {
    if (rows.length === 0) return
    const columns = Object.keys(rows[0] ?? {})
    const names = columns.map((column) => `"${column}"`).join()
    const marks = columns.map(() => '?').join()
    const into = file.prepare(`INSERT INTO "${table}" (${names}) VALUES (${marks})`)
    for (const row of rows) into.run(columns.map((column) => stored(row[column] ?? null)))
  }
  const heads = Array.from({ length: count }, (_, index) => from + index)
  file.transaction(() => {
    if (from === 0) insert('Vendor', [{ ...vendor, createdAt: now }])
    for (const [table, rowsOf] of Object.entries({ ...job, ...head, ...work, Reading: readings(each), ...outside })) {
      insert(
        table,
        heads.flatMap((index) => rowsOf(numbered(index), new Date(now.getTime() - (index % 700) * dayMs), index)),
      )
    }
  })()
}

const numbered = (index: number): string => String(index).padStart(5, '0')

/** As the client stores it. */
function stored(value: Row[string] | null): string | number | null {
  if (value instanceof Date) return value.toISOString().replace('Z', '+00:00')
  return typeof value === 'boolean' ? Number(value) : (value ?? null)
}
