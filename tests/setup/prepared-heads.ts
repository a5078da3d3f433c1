import type { Preset, WorkId } from '@/lib/core/route/step-ids'
import type { StepRef } from '@/lib/core/route/keys'
import { alikeTo } from '@/lib/data/alike'
import { castingPicks } from '@/lib/data/castings-read'
import { db } from '@/lib/data/db'
import { driveTo, oneHand, tick, type Hands, type OnTheWay } from '@/lib/demo/drive/drive'
import type { DemoStaff } from '@/lib/demo/shop'
import { alikeSchema } from '@/lib/schemas/alike'
import { bookJobSchema, emptyBooking, emptyHead, orderOf } from '@/lib/schemas/job'
import { planChoiceSchema } from '@/lib/schemas/plan'
import { bookJob } from '@/lib/use-cases/jobs/book-job'
import { makePlanVersion } from '@/lib/use-cases/plans/make-plan-version'

/**
 * Heads that browser tests start from: booked and driven by the same use cases as at the counter and the benches, before
 * the server starts. What a test is about is still done on its page; what only leads there is not. Each test has a
 * customer of its own, by whom the head is known.
 */
type Prepared = {
  readonly phone: string
  readonly casting?: string
  readonly target?: string
  readonly preset?: Preset
  readonly also?: readonly WorkId[]
  readonly overheated?: true
  /** Everything before this step is done. Left out: just booked. */
  readonly at?: StepRef
  /** What is read otherwise than usual on the way. */
  readonly read?: OnTheWay
  /** Made when everything before a step is done. */
  readonly plan?: { readonly before: StepRef; readonly choice: Readonly<Record<string, string>> }
  /** Done as well, though it comes later. */
  readonly done?: readonly StepRef[]
}

const washed = { at: 'crack' } as const
const refresh = { preset: 'refresh', target: '' } as const
const corners = (text: string) => ({ 'intake-1': text, 'exhaust-1': text, 'intake-2': text, 'exhaust-2': text })
const nothingRemoved = { thickness: corners('4.250'), straightness: '.001', 'removed-before': '0' } as const

const heads = {
  'Ansel Firth': { phone: '555-0601' },
  'Berta Quill': { phone: '555-0602', at: 'wash-in' },
  'Caspar Wray': { phone: '555-0603', at: 'wash-in' },
  'Delia Thorn': { phone: '555-0604', at: 'chambers' },
  'Emrys Colt': { phone: '555-0605', at: 'chambers' },
  'Flora Penn': { phone: '555-0606', at: 'wash-in' },
  'Gideon Marl': { phone: '555-0607', at: 'chambers' },
  'Hester Loame': { phone: '555-0608' },
  'Ivo Branscombe': { phone: '555-0609' },
  'Juno Wetherell': { phone: '555-0610' },
  'Kit Ambler': { phone: '555-0611' },
  'Wilma Harrow': { phone: '555-0612', ...refresh, at: 'wash-in' },
  'Tobin Sayle': { phone: '555-0613', ...refresh, at: 'final' },
  'Linnet Orme': { phone: '555-0614', ...refresh, at: 'wash-in' },
  'Rook Sandoval': { phone: '555-0615', casting: 'Kestle 64', target: '', preset: 'port-and-flow', at: 'flow-before' },
  'Sabine Orchard': { phone: '555-0616', ...washed },
  'Corbin Ashdown': { phone: '555-0617', ...washed },
  'Delphine Marsh': { phone: '555-0618' },
  'Lowell Wexcombe': { phone: '555-0619', ...washed },
  'Wystan Fenn': { phone: '555-0173' },
  'Piran Stowell': { phone: '555-0621' },
  'Isolde Orrell': {
    ...{ phone: '555-0622', casting: 'Orrell wedge', target: '54', preset: 'refresh', at: 'angle-cut' },
    plan: { before: 'thickness', choice: { kind: 'angle-flat', splitBy: 'flat', flatIn: '20 thou' } },
    read: {
      thickness: nothingRemoved,
      chambers: { cc: { '1': '64.1', '2': '63.9', '3': '64.0', '4': '64.0' } },
    },
  },
  'Ottoline Drax': { phone: '555-0623', ...refresh },
  'Corin Halloway': {
    ...{ phone: '555-0624', at: 'chambers' },
    read: { thickness: { ...nothingRemoved, thickness: corners('4.132'), 'removed-before': '.118' } },
  },
  'Merrin Lowick': { phone: '555-0625' },
  'Silas Cawdrey': {
    ...{ phone: '555-0164', casting: 'Cawdrey wedge', target: '60', preset: 'refresh', also: ['flat-cut'] },
    plan: { before: 'thickness', choice: { kind: 'flat' } },
    ...{ at: 'flat-cut', done: ['seat-work'] },
    read: {
      thickness: nothingRemoved,
      chambers: { cc: { '1': '63.1', '2': '62.9', '3': '63.0', '4': '63.0' } },
    },
  },
  'Oriel Pascoe': { phone: '555-0632', ...washed },
  'Nerys Halden': { phone: '555-0627', at: 'wash-in' },
  'Perrin Oakhanger': { phone: '555-0628', ...refresh, overheated: true },
  'Hale Winterbourne': { phone: '555-0629', ...washed },
  'Odette Fairlie': { phone: '555-0630', casting: 'Cawdrey wedge', preset: 'refresh' },
  'Ottoline Frayne': { phone: '555-0631', casting: 'Cawdrey wedge', preset: 'refresh' },
} as const satisfies Readonly<Record<string, Prepared>>

export type PreparedCustomer = keyof typeof heads

/** A job with one head. Whoever resembles its customer is another. */
export async function bookPrepared(staff: DemoStaff, customer: string, wanted: Prepared, now: Date) {
  const { casting = 'Harrow wedge 64', target = '60', preset = 'cut-to-size', also = [] } = wanted
  const castings = await castingPicks(await db())
  const castingId = castings.rows.find(({ name }) => name === casting)?.id
  if (!castingId) throw new Error(`The demo has no casting ${casting}.`)
  const form = {
    ...emptyBooking(),
    ...{ preset, targetCc: target },
    customer: { id: '', name: customer, phone: wanted.phone, email: '', address: '' },
    ordered: [...orderOf(preset), ...also.map((work) => ({ work, note: '' }))],
    heads: [{ ...emptyHead(), castingId, overheated: wanted.overheated ?? false }],
  }
  const typed = alikeSchema.parse(form)
  const alike = await alikeTo(await db(), typed, { customers: [], heads: [] })
  const notThese = { customers: alike.customers.map(({ id }) => id), heads: alike.heads.map(({ head }) => head.id) }
  const booked = await bookJob(staff.tamsin, bookJobSchema.parse({ ...form, notThese }), { now })
  const [visit] = booked.heads
  if (!visit) throw new Error(`${customer} has no head.`)
  return { number: booked.number, visit }
}

async function plan(hands: Hands, staff: DemoStaff, visit: { visitId: string; pairId: string }, wanted: Prepared) {
  if (!wanted.plan) return
  await driveTo(hands, visit.visitId, wanted.plan.before, wanted.read)
  const nothing = { splitBy: 'margin', flatIn: '', angleIn: '', angleDeg: '', stopAtIn: '', sinkIn: '', reason: '' }
  const form = { pairId: visit.pairId, seenVersion: 0, ...nothing, ...wanted.plan.choice }
  await makePlanVersion(staff.bram, planChoiceSchema.parse(form), { now: hands.time('deck-mill') })
}

/** The number of each one's job, the tag of its head and its visit, by the customer's name. */
export async function prepareHeads(staff: DemoStaff, now: Date) {
  const hands = oneHand(staff.dov, now)
  const made: Record<string, { number: string; tag: string; visit: string }> = {}
  for (const [customer, wanted] of Object.entries<Prepared>(heads)) {
    const { number, visit } = await bookPrepared(staff, customer, wanted, now)
    await plan(hands, staff, visit, wanted)
    if (wanted.at) await driveTo(hands, visit.visitId, wanted.at, wanted.read)
    for (const step of wanted.done ?? []) await tick(hands, visit.visitId, step)
    made[customer] = { number, tag: visit.tag, visit: visit.visitId }
  }
  return made
}
