import { workLabel } from '@/lib/core/route/presets'
import { progress } from '@/lib/core/route/progress'
import type { WorkId } from '@/lib/core/route/types'
import type { JobSheetData, JobSheetHead } from '@/lib/pdf/job-sheet'
import { declinedOf } from './declined'
import { headDrawing } from './head-drawing'
import { jobSteps } from './job-steps'
import { shopBlock, type PaperHead } from './paper-head'
import { planFigures, planNotes, planTitleOf } from './plan-figures'
import { readAt } from './read'
import { addressWarning, qrTextOf } from './tag-address'
import type { SpecShop } from './spec-sheet-of'
import { askedWords, castingWords, engineWords, marksWords, sideWords } from './spec-words'
import { dateWords, dayWords } from './when-words'

type Job = {
  readonly number: string
  readonly promiseOn: string | null
  readonly urgent: boolean
  readonly note: string
  readonly customer: { readonly contact: { readonly name: string; readonly phone: string } | null }
  readonly engine: PaperHead['visit']['job']['engine']
}

/** Everything the job sheet says: the heads may go a day on it without the network. */
export function jobSheetOf(
  job: Job,
  heads: readonly PaperHead[],
  shop: SpecShop,
  nameOf: (personId: string) => string,
): JobSheetData {
  const [first] = heads
  return {
    language: shop.locale,
    shop: shopBlock(shop),
    jobNumber: job.number,
    customer: job.customer.contact?.name ?? '',
    phone: job.customer.contact?.phone ?? '',
    promised: dayWords(job.promiseOn, shop),
    urgency: job.urgent ? 'urgent' : '',
    engine: engineWords(job.engine),
    ordered: first ? [...askedWords(first), ...orderNotes(first)] : [],
    notes: job.note,
    addressWarning: addressWarning(),
    heads: heads.map((head) => jobHead(head, shop, nameOf)),
  }
}

/** What was written beside a line when it was ordered: for the bench, not for the customer. */
const orderNotes = ({ visit, settings }: PaperHead): string[] =>
  visit.ordered
    .filter((line) => line.endedAt === null && line.note !== '')
    .map((line) => `${workLabel(line.work as WorkId, settings.rules)}: ${line.note}`)

function jobHead(head: PaperHead, shop: SpecShop, nameOf: (id: string) => string): JobSheetHead {
  const { visit, facts } = head
  const cameWith = readAt(head.readings, 'check-in', 'came-with').at(-1)?.text ?? visit.cameWith
  return {
    tag: head.tag,
    qrText: qrTextOf(head.tag),
    casting: castingWords(head),
    marks: marksWords(head),
    side: sideWords(visit.side),
    place: visit.rackPlace,
    pairTags: head.mateTags,
    cameWith,
    planTitle: planTitleOf(head),
    planFigures: planFigures(head),
    planNotes: planNotes(head),
    drawing: headDrawing(head),
    graduations: progress(head.route, facts.openHolds.length > 0),
    steps: jobSteps(head),
    cautions: [...facts.openHolds.map((hold) => `On hold: ${hold.reason}`), ...(head.plan?.cautions ?? [])],
    declined: declinedOf(head, shop).map(({ what, how }) => [what, how].filter(Boolean).join(', ')),
    waivers: visit.waivers.map(
      ({ what, reason, byId, at }) => `${what}: ${reason} (${nameOf(byId)}, ${dateWords(at, shop)})`,
    ),
  }
}
