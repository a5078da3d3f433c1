import type { Actor } from '@/lib/core/access/roles'
import { RefusedError } from '@/lib/core/errors'
import type { StepId } from '@/lib/core/route/step-ids'
import { seeBackRoom } from '@/lib/use-cases/back-room/see-back-room'
import { seeTrail } from '@/lib/use-cases/back-room/see-trail'
import { findCastings } from '@/lib/use-cases/castings/find-castings'
import { seeCasting, seeCastings } from '@/lib/use-cases/castings/see-castings'
import { seeRates } from '@/lib/use-cases/castings/see-rates'
import { seeCounter } from '@/lib/use-cases/counter/see-counter'
import { previewImport } from '@/lib/use-cases/customers/preview-import'
import { seeCustomer } from '@/lib/use-cases/customers/see-customer'
import { seeCustomers } from '@/lib/use-cases/customers/see-customers'
import { seeAlike } from '@/lib/use-cases/customers/see-alike'
import { findCustomers } from '@/lib/use-cases/customers/find-customers'
import { printEstimate } from '@/lib/use-cases/cut-bench/print-estimate'
import { seeBench } from '@/lib/use-cases/cut-bench/see-bench'
import { seeBenchCasting } from '@/lib/use-cases/cut-bench/see-bench-casting'
import { seeEstimate } from '@/lib/use-cases/cut-bench/see-estimate'
import { startBookingFromEstimate } from '@/lib/use-cases/cut-bench/start-booking'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { findHeads } from '@/lib/use-cases/find/find-heads'
import { seeFinding } from '@/lib/use-cases/findings/see-finding'
import { seeFlow } from '@/lib/use-cases/flow/see-flow'
import { seeFlowStep } from '@/lib/use-cases/flow/see-flow-step'
import { seeReferences } from '@/lib/use-cases/flow/see-references'
import { seeHandOver } from '@/lib/use-cases/hand-over/see-hand-over'
import { seeHead } from '@/lib/use-cases/heads/see-head'
import { proposePromiseSchema } from '@/lib/schemas/promise'
import { proposePromise } from '@/lib/use-cases/jobs/propose-promise'
import { seeBooking } from '@/lib/use-cases/jobs/see-booking'
import { startBookingAgain } from '@/lib/use-cases/jobs/start-again'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { seeByLink, specByLink } from '@/lib/use-cases/links/see-by-link'
import { seeLinks } from '@/lib/use-cases/links/see-links'
import { seeMailServer } from '@/lib/use-cases/messages/see-mail-server'
import { seeMailTrouble } from '@/lib/use-cases/messages/see-mail-trouble'
import { seeMessages } from '@/lib/use-cases/messages/see-messages'
import { seeText, seeTexts } from '@/lib/use-cases/messages/see-texts'
import { seeAway } from '@/lib/use-cases/outside/see-away'
import { seeOrder } from '@/lib/use-cases/outside/see-order'
import { seeSending } from '@/lib/use-cases/outside/see-sending'
import { headOfTag } from '@/lib/use-cases/papers/head-of-tag'
import { printLabelsOfTags, printTagLabels } from '@/lib/use-cases/papers/print-labels'
import { printJobSheet, printOutsideSheet } from '@/lib/use-cases/papers/print-papers'
import { printClaimTicket } from '@/lib/use-cases/papers/print-claim-ticket'
import { printHandOverSlip } from '@/lib/use-cases/papers/print-hand-over-slip'
import { printSpecSheet } from '@/lib/use-cases/papers/print-spec-sheet'
import { seeLabelHeads } from '@/lib/use-cases/papers/see-label-heads'
import { seeAccount } from '@/lib/use-cases/people/see-account'
import { seeWaits } from '@/lib/use-cases/people/lift-waits'
import { seePeople, seePerson } from '@/lib/use-cases/people/see-people'
import { seeResetLink } from '@/lib/use-cases/people/reset-password'
import { seeSessions } from '@/lib/use-cases/people/see-sessions'
import {
  seeFindingPhotos,
  seeHeadPhotos,
  seeOrderPhotos,
  seePicture,
  seePictureByLink,
  seeVisitPhotos,
} from '@/lib/use-cases/photos/see-photos'
import { seeBackupLine, seeBackups } from '@/lib/use-cases/backup/see-backups'
import { exportBooks } from '@/lib/use-cases/money/export-books'
import { printMoneyPaper } from '@/lib/use-cases/money/print-money-paper'
import { seeBooks } from '@/lib/use-cases/money/see-books'
import { seeInvoice } from '@/lib/use-cases/money/see-invoice'
import { seeUnpaid } from '@/lib/use-cases/money/see-unpaid'
import { seePlan } from '@/lib/use-cases/plans/see-plan'
import { findPrices } from '@/lib/use-cases/prices/find-prices'
import { seePriceItem, seePriceList } from '@/lib/use-cases/prices/see-price-list'
import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { seeRulesPreview } from '@/lib/use-cases/rules/see-rules-preview'
import { seeSettings } from '@/lib/use-cases/settings/see-settings'
import { health } from '@/lib/use-cases/shop/health'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeInstrument, seeInstruments } from '@/lib/use-cases/shop/see-instruments'
import { seeLogo, seeLogoByLink } from '@/lib/use-cases/shop/see-logo'
import { seeShop } from '@/lib/use-cases/shop/see-shop'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeLeftStep } from '@/lib/use-cases/stations/see-left-step'
import { seeOpenStep } from '@/lib/use-cases/stations/see-open-step'
import { seeQueue } from '@/lib/use-cases/stations/see-queue'
import { seeStation } from '@/lib/use-cases/stations/see-station'
import { seeStationNames } from '@/lib/use-cases/stations/see-station-names'
import { seeStations } from '@/lib/use-cases/stations/see-stations'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { seeArriving } from '@/lib/use-cases/supply/see-arriving'
import { seeOrdering } from '@/lib/use-cases/supply/see-ordering'
import { seeSupply } from '@/lib/use-cases/supply/see-supply'
import { enrolTablet } from '@/lib/use-cases/tablets/enrol-tablet'
import { makeTabletCode } from '@/lib/use-cases/tablets/make-tablet-code'
import { seeEnrolling } from '@/lib/use-cases/tablets/see-enrolling'
import { seeRack } from '@/lib/use-cases/tablets/see-rack'
import { seeTaxPicks, seeTaxRate, seeTaxRates } from '@/lib/use-cases/taxes/see-tax-rates'
import { seeTablet, seeTablets } from '@/lib/use-cases/tablets/see-tablets'
import { findVendors } from '@/lib/use-cases/vendors/find-vendors'
import { seeVendor, seeVendors } from '@/lib/use-cases/vendors/see-vendors'
import type { TestDatabase } from '@/tests/setup/database'

export type Pages = Readonly<Record<string, () => Promise<unknown>>>

/** What each page asks of its use cases that is not about one thing alone. */
export const listPages = (actor: Actor, now: Date) =>
  ({
    queue: () => all(seeQueue(actor, 'measuring-bench'), seeStationNames(actor), newestChange(), shopLocale()),
    'a station that is followed': () => seeStation(actor, 'measuring-bench', 1_000_000, now),
    stations: () => all(seeStations(actor), seeStationNames(actor), newestChange()),
    counter: () => all(seeCounter(actor, { now }), newestChange()),
    'counter, at risk': () => seeCounter(actor, { now, filter: 'risk' }),
    arriving: () => seeArriving(actor, now),
    away: () => all(seeAway(actor, now), newestChange()),
    'back room': () => all(seeBackRoom(actor, now), seeBackupLine(actor, now), newestChange()),
    trail: () => seeTrail(actor, { find: '', before: null }),
    'trail of a person and a month': () =>
      seeTrail(actor, { find: '', personId: actor.personId, from: '2026-02-01', to: '2026-02-28', before: 900_000 }),
    'trail searched': () => seeTrail(actor, { find: 'ticked', before: null }),
    find: () => findAnything(actor, { q: 'mk-12' }),
    'a tag': () => headOfTag(actor, 'T-10012'),
    'a tag at a station': async () => seeOpenStep(actor, (await headOfTag(actor, 'T-10012')) ?? '', 'measuring-bench'),
    booking: () => seeBooking(actor, { now }),
    'a promise proposed': () => proposePromise(actor, anyProposal, now),
    'head while booking': () => findHeads(actor, { q: 'mk-12' }),
    'customer while booking': () => findCustomers(actor, { q: 'customer 0001' }),
    'castings typed': () => findCastings(actor, { q: 'a wedge' }),
    'vendors typed': () => findVendors(actor, { q: 'angle' }),
    'prices typed': () => findPrices(actor, { q: 'flat cut' }),
    customers: () => seeCustomers(actor, { q: '', page: 1 }),
    'customers, page 2': () => seeCustomers(actor, { q: '', page: 2 }),
    'customers looked for': () => seeCustomers(actor, { q: 'customer 0001', page: 1 }),
    'an import looked at': () =>
      previewImport(actor, { text: 'Name,Phone,E-mail\nNobody Here,212-555-0199,n@shop.example', columns: null }),
    'is it a customer or head on record': () =>
      seeAlike(actor, {
        customer: { id: '', name: 'Customer 00012', phone: '555-1234567', email: 'a@shop.example' },
        heads: [{ headId: '', stamp: 'mk-12', tag: 'T-10012' }],
      }),
    labels: () => all(seeLabelHeads(actor, { tags: ['T-10012'] }, now), newestChange()),
    'labels of tags': () => printLabelsOfTags(actor, { first: null, tags: ['T-10000'] }, now),
    ordering: () => seeOrdering(actor, { job: null, now }),
    'cut bench': () => seeBench(actor, ''),
    people: () => seePeople(actor),
    castings: () => seeCastings(actor),
    vendors: () => seeVendors(actor),
    prices: () => all(seePriceList(actor), seeRules(actor), seeTaxPicks(actor)),
    taxes: () => seeTaxRates(actor),
    unpaid: () => seeUnpaid(actor),
    backup: () => seeBackups(actor, now),
    bookkeeper: () => seeBooks(actor, now),
    'books of a month': () => exportBooks(actor, { kind: 'tax', from: '2026-02-01', to: '2026-02-28' }, { now }),
    'payments of a month': () =>
      exportBooks(actor, { kind: 'payments', from: '2026-02-01', to: '2026-02-28' }, { now }),
    instruments: () => seeInstruments(actor, now),
    settings: () => seeSettings(actor),
    'texts to customers': () => seeTexts(actor),
    'mail server': () => seeMailServer(actor),
    'mails in trouble': () => seeMailTrouble(actor),
    'a text to customers': () => seeText(actor, 'ready'),
    tablets: () => seeTablets(actor),
    'a new tablet': () => seeEnrolling(actor),
    rules: () => seeRules(actor),
    'rules to apply': () => seeRulesPreview(actor),
    shop: () => seeShop(actor),
    ...laterPages(actor, now),
    'is it there': () => health(new Date()),
  }) as const satisfies Pages

const anyProposal = proposePromiseSchema.parse({
  ...{ source: 'customer', used: '1', cameAssembled: '0', overheated: '0', urgent: '0' },
  ordered: 'flat-cut,guides,seat-work',
})

/** The second page of each list that has several. */
const laterPages = (actor: Actor, now: Date) => ({
  'queue, page 2': () => seeQueue(actor, 'measuring-bench', 2),
  'counter, page 2': () => seeCounter(actor, { now, page: 2 }),
  'away, page 2': () => seeAway(actor, now, 2),
  'back room, page 2': () => seeBackRoom(actor, now, 2),
  'labels, page 2': () => seeLabelHeads(actor, { tags: [], page: 2 }, now),
  'ordering, page 2': () => seeOrdering(actor, { job: null, now, page: 2 }),
  'trail, page 2': () => seeTrail(actor, { find: '', before: 1000 }),
  'trail searched, page 2': () => seeTrail(actor, { find: 'ticked', before: 1000 }),
  'people, page 2': () => seePeople(actor, 2),
  'castings, page 2': () => seeCastings(actor, 2),
  'vendors, page 2': () => seeVendors(actor, 2),
  'prices, page 2': () => seePriceList(actor, 2),
  'taxes, page 2': () => seeTaxRates(actor, 2),
  'unpaid, page 2': () => seeUnpaid(actor, 2),
  'instruments, page 2': () => seeInstruments(actor, now, 2),
  'tablets, page 2': () => seeTablets(actor, 2),
  'settings, page 2': () => seeSettings(actor, 2),
  'rules to apply, page 2': () => seeRulesPreview(actor, 2),
})

export type Things = {
  readonly visits: readonly { readonly id: string; readonly headId: string; readonly steps: readonly Step[] }[]
  readonly jobs: readonly { readonly id: string; readonly number: string }[]
  readonly gone: readonly string[]
  readonly released: readonly string[]
  readonly pairs: readonly string[]
  readonly orders: readonly string[]
  readonly supplies: readonly string[]
  readonly findings: readonly string[]
  readonly estimates: readonly string[]
  readonly castings: readonly string[]
  readonly customers: readonly string[]
  readonly people: readonly string[]
  readonly vendors: readonly string[]
  readonly instruments: readonly string[]
  readonly prices: readonly string[]
  readonly taxes: readonly string[]
  readonly invoices: readonly string[]
  readonly moneyPapers: readonly string[]
  readonly photos: readonly string[]
  readonly tablets: readonly { readonly tabletId: string; readonly token: string }[]
}
type Step = {
  readonly visitId: string
  readonly stepId: string
  readonly occurrence: string
  readonly orderKey: string
}

const id = { id: true } as const
const idsOf = (rows: readonly { readonly id: string }[]): string[] => rows.map((row) => row.id)

/** Every thing of a shop that has a page of its own. */
export async function thingsOf({ client }: TestDatabase): Promise<Things> {
  const visits = await client.visit.findMany({ select: { id: true, headId: true, steps: true } })
  const left = await client.job.findMany({ where: { visits: { some: { handOver: { isNot: null } } } } })
  return {
    visits,
    jobs: await client.job.findMany({ select: { id: true, number: true } }),
    gone: left.map(({ number }) => number),
    released: idsOf(await client.visit.findMany({ where: { releases: { some: {} } }, select: id })),
    pairs: idsOf(
      await client.pair.findMany({ where: { visits: { some: { scrappedAt: null, returned: null } } }, select: id }),
    ),
    orders: idsOf(await client.outsideOrder.findMany({ select: id })),
    supplies: idsOf(await client.supplyOrder.findMany({ select: id })),
    findings: idsOf(await client.finding.findMany({ select: id })),
    estimates: idsOf(await client.estimate.findMany({ select: id })),
    castings: idsOf(await client.castingRecord.findMany({ select: id })),
    customers: idsOf(await client.customer.findMany({ select: id })),
    people: idsOf(await client.person.findMany({ select: id })),
    vendors: idsOf(await client.vendor.findMany({ select: id })),
    instruments: idsOf(await client.instrument.findMany({ select: id })),
    prices: idsOf(await client.priceItem.findMany({ select: id })),
    taxes: idsOf(await client.taxRate.findMany({ select: id })),
    invoices: idsOf(await client.moneyPaper.findMany({ where: { kind: 'invoice' }, select: id })),
    moneyPapers: idsOf(await client.moneyPaper.findMany({ select: id })),
    photos: idsOf(await client.photo.findMany({ select: id })),
    tablets: [await enrolled(client)],
  }
}

/** A device that one of the shop's owners enrolled. */
async function enrolled(client: TestDatabase['client']) {
  const { id: personId, name } = await client.person.findFirstOrThrow({ where: { roles: { contains: 'owner' } } })
  const now = new Date()
  const owner: Actor = { personId, name, roles: ['owner'], grants: [] }
  const { code } = await makeTabletCode(owner, { name: 'Mill', station: 'deck-mill' }, { now })
  return enrolTablet({ code }, { now })
}

const refusedWith = (error: unknown): string => {
  if (error instanceof RefusedError) return error.refusal.code
  throw error
}

/** What the person may not see is not there, and the rest of the page is. */
export const unlessRefused = (seen: Promise<unknown>): Promise<unknown> =>
  seen.catch((error: unknown) => {
    if (refusedWith(error) === 'not-allowed') return null
    throw error
  })

const all = (...seen: readonly Promise<unknown>[]): Promise<unknown[]> => Promise.all(seen.map(unlessRefused))

const each = async <T>(things: readonly T[], see: (thing: T) => Promise<unknown>): Promise<unknown[]> => {
  if (things.length === 0) throw new Error('There is nothing to see.')
  const seen: unknown[] = []
  for (const thing of things) seen.push(await unlessRefused(see(thing)))
  return seen
}

/** What a link does not open is looked for all the same. */
const unlessDead = (seen: Promise<unknown>): Promise<unknown> => seen.catch(refusedWith)

/** Of each step the newest and the oldest there is. */
function stepsOf({ visits }: Things): readonly Step[] {
  const steps = visits.flatMap((visit) => visit.steps)
  const nameOf = ({ stepId, occurrence }: Step) => `${stepId} ${occurrence}`
  const first = new Map(steps.toReversed().map((step) => [nameOf(step), step]))
  const last = new Map(steps.map((step) => [nameOf(step), step]))
  return [...new Set([...first.values(), ...last.values()])]
}

/** The page of every thing there is. */
export const thingPages = (actor: Actor, now: Date, things: Things, token: string) =>
  ({
    head: () => each(things.visits, ({ headId }) => all(seeHead(actor, headId), seeHeadPhotos(actor, headId, now))),
    flow: () =>
      each(things.visits, ({ headId }) => seeFlow(actor, headId, { before: '', after: '', run: [] } as never)),
    step: () =>
      each(stepsOf(things), async ({ visitId, stepId, occurrence, orderKey }) => {
        const key = { stepId: stepId as StepId, occurrence, orderId: orderKey === '' ? null : orderKey }
        return all(
          seeStep(actor, visitId, key, now),
          seeLeftStep(actor, visitId, key, 'measuring-bench'),
          ...(stepId === 'flow' ? [seeFlowStep(actor, visitId, key)] : []),
          seeVisitPhotos(actor, visitId, now),
        )
      }),
    job: () => each(things.jobs, ({ number }) => seeJob(actor, { number, now })),
    customer: () => each(things.customers, (customer) => seeCustomer(actor, customer)),
    messages: () => each(things.jobs, ({ number }) => seeMessages(actor, number)),
    links: () => each(things.jobs, ({ number }) => seeLinks(actor, number, now)),
    'hand over': () => each(things.jobs, ({ number }) => seeHandOver(actor, number)),
    plan: () => each(things.pairs, (pair) => seePlan(actor, pair)),
    order: () => each(things.orders, (order) => all(seeOrder(actor, order), seeOrderPhotos(actor, order, now))),
    sending: () =>
      each(things.visits.slice(0, 6), (visit) => seeSending(actor, { visitIds: [visit.id], redoOfId: null })),
    supply: () => each(things.supplies, (supply) => seeSupply(actor, supply, now)),
    finding: () =>
      each(things.findings, (finding) =>
        all(seeFinding(actor, { id: finding, now }), seeFindingPhotos(actor, finding, now)),
      ),
    estimate: () => each(things.estimates, (estimate) => seeEstimate(actor, estimate)),
    'booking the same again': () => each(things.jobs, ({ number }) => startBookingAgain(actor, number)),
    'booking from an estimate': () => each(things.estimates, (estimate) => startBookingFromEstimate(actor, estimate)),
    casting: () =>
      each(things.castings, (casting) =>
        all(
          seeCasting(actor, casting),
          seeRates(actor, casting),
          seeReferences(actor, casting),
          seeBenchCasting(actor, casting),
        ),
      ),
    person: () =>
      each(things.people, (personId) =>
        all(
          seePerson(actor, personId),
          seeAccount({ ...actor, personId }),
          seeSessions(actor, personId, null, now),
          seeWaits(actor, personId, now),
        ),
      ),
    tablet: () =>
      each(things.tablets, ({ tabletId, token: own }) => all(seeTablet(actor, tabletId), seeRack(own, now))),
    vendor: () => each(things.vendors, (vendor) => seeVendor(actor, vendor)),
    instrument: () => each(things.instruments, (instrument) => seeInstrument(actor, instrument, now)),
    tax: () => each(things.taxes, (tax) => seeTaxRate(actor, tax)),
    invoice: () => each(things.invoices, (invoice) => seeInvoice(actor, invoice)),
    price: () => each(things.prices, (price) => seePriceItem(actor, price)),
    photo: () => each(things.photos, (photo) => seePicture(actor, photo, 'full')),
    logo: () => unlessDead(seeLogo(actor, '')),
    'link to choose a password': () => unlessDead(seeResetLink('x'.repeat(32), now)),
    'customer link': () => linkPage(now, things, token),
    papers: () =>
      all(
        each(things.jobs, ({ number }) => printJobSheet(actor, number, now)),
        each(things.jobs, ({ number }) => printClaimTicket(actor, number, now)),
        each(things.gone, (number) => printHandOverSlip(actor, number, now)),
        each(things.moneyPapers, (paper) => printMoneyPaper(actor, paper)),
        each(things.gone, (number) => printTagLabels(actor, number, now)),
        each(things.orders, (order) => printOutsideSheet(actor, order, now)),
        each(things.estimates, (estimate) => printEstimate(actor, estimate, now)),
        each(things.released, (visit) => printSpecSheet(actor, visit)),
      ),
  }) as const satisfies Pages

/** All that a link of a customer opens. */
export const linkPage = (now: Date, things: Things, token: string): Promise<unknown[]> =>
  all(
    seeByLink(token, now),
    each(things.released, (visit) => unlessDead(specByLink(token, visit, now))),
    each(things.photos, (photo) => unlessDead(seePictureByLink(token, photo, 'full', now))),
    unlessDead(seeLogoByLink(token, now)),
  )
