import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { ChamberForm } from '@/lib/core/casting/figures'
import { isWorkId, type Preset } from '@/lib/core/route/step-ids'
import { isTag } from '@/lib/core/shop/tag-number'
import { typedFigure } from '@/lib/core/units/typed-figure'
import { typedWantedKeys } from '@/lib/core/wanted/figures'
import { customerForBooking } from '@/lib/data/customers'
import { db, type Reader } from '@/lib/data/db'
import { jobWithCalls } from '@/lib/data/jobs'
import { accountOf } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { wantedOnJob } from '@/lib/data/stored/wanted'
import { taxPicks } from '@/lib/data/tax-rates'
import { loadDossier, loadDossiers, type Dossier } from '@/lib/dossier/dossier'
import { hasLeft } from '@/lib/dossier/has-left'
import { emptyBooking, emptyEngineFigures, emptyHead, type BookJobForm, type HeadForm } from '@/lib/schemas/job'
import { wantedForm } from '@/lib/schemas/wanted'
import { accountView } from './account-view'
import { engineView } from './engine-view'

/** A booking's form begun from an earlier job: the same customer, engine, heads, work, limits and prices; a promise of its own. */
export async function startBookingAgain(actor: Actor, number: string): Promise<BookJobForm> {
  must(allow(actor, 'job.book'))
  const client = await db()
  const job = await jobWithCalls(client, number)
  const heads = await loadDossiers(client, { jobId: job.id })
  const [first] = heads
  if (!first) return emptyBooking()
  return {
    ...sameJob(first),
    heads: heads.map((head) => sameHead(head)),
    ordered: orderedOf(first),
    prices: await pricesOf(client, job.id, heads.length),
  }
}

/** A booking's form for a customer on record: whoever opened it from their page does not type the name again. */
export async function startBookingFor(actor: Actor, customerId: string): Promise<BookJobForm> {
  must(allow(actor, 'job.book'))
  return { ...emptyBooking(), customer: await customerForBooking(await db(), customerId) }
}

/** A head comes back because of what was done on this visit: the customer, the engine and the head; the work is for the counter to choose. */
export async function startComeback(actor: Actor, visitId: string): Promise<BookJobForm> {
  must(allow(actor, 'job.book'))
  const dossier = await loadDossier(await db(), visitId)
  return { ...sameJob(dossier), heads: [{ ...sameHead(dossier), comeback: true }], ordered: [] }
}

function sameJob(dossier: Dossier): BookJobForm {
  const { job } = dossier.visit
  const { contact } = job.customer
  const engine = engineView(job.engine)
  const target = typedFigure({ text: dossier.visit.targetText, unit: dossier.visit.targetUnit })
  return {
    ...emptyBooking(),
    customer: {
      id: job.customerId,
      name: contact?.name ?? '',
      phone: contact?.phone ?? '',
      email: contact?.email ?? '',
      address: contact?.address ?? '',
    },
    engine: {
      label: engine.label,
      layout: engine.layout,
      camInHead: engine.camInHead,
      figures: {
        ...emptyEngineFigures(),
        ...Object.fromEntries(engine.figures.map((figure) => [figure.key, typedFigure(figure)])),
      },
    },
    preset: job.preset as Preset,
    targetCc: target,
    classFlatOnly: job.classFlatOnly,
    classMinCc: job.classMinText,
    classMaxCut: job.classMaxCutText,
    finishAsked: job.finishAsked,
    wanted: wantedForm(typedWantedKeys, wantedOnJob.read(job.wanted, job.id)),
    pricesOnLink: job.pricesOnLink,
    note: job.note,
  }
}

/** A head that has left may come back; for one that is still here another of its casting is booked. */
function sameHead({ visit, label }: Dossier): HeadForm {
  const { head } = visit
  const kind = {
    ...emptyHead(),
    castingId: head.castingId ?? '',
    material: head.material,
    chamberForm: head.chamberForm as ChamberForm,
    side: visit.side,
    used: visit.used,
  }
  if (!hasLeft(visit)) return kind
  return { ...kind, headId: head.id, stamp: head.stamp, marks: head.marks, tag: isTag(label) ? label : '', used: true }
}

const orderedOf = ({ visit }: Dossier): BookJobForm['ordered'] =>
  visit.ordered.flatMap(({ work, note, endedAt, findingId }) =>
    endedAt === null && findingId === null && isWorkId(work) ? [{ work, note }] : [],
  )

/** What was charged, less what a finding or a discount brought; a line for each head follows the heads again. */
async function pricesOf(reader: Reader, jobId: string, heads: number): Promise<BookJobForm['prices']> {
  const shop = await shopOf(reader)
  const { prices } = accountView(await accountOf(reader, jobId), {
    ...shop,
    names: new Map(),
    taxPicks: await taxPicks(reader),
  })
  return prices
    .filter(({ reason }) => reason === '')
    .map(({ typed }) => ({ ...typed, perHead: heads > 1 && typed.quantity === String(heads) }))
}
