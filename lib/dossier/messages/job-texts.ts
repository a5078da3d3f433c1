import type { MessageKind } from '@/lib/core/messages/kinds'
import { lacksOf, type MessageLack } from '@/lib/core/messages/needs'
import { fillSubject, fillWording, linkMark, type MessageValues } from '@/lib/core/messages/wording'
import { formatMoney } from '@/lib/core/money/format-money'
import { headName } from '@/lib/core/shop/tag-number'
import { dayWords } from '@/lib/core/shop/when-words'
import type { JobToWriteOf } from '@/lib/data/messages'
import { defaultWording, type Wording } from '@/lib/words/messages'
import { isOver, questionOf, type Manner } from '../question'

type Shop = Manner & { readonly name: string; readonly phone: string }
type OpenFinding = JobToWriteOf['visits'][number]['findings'][number] & { readonly tag: string }

/** A text as it would go to this customer now; `lacks`: why it cannot yet. */
export type JobText = Wording & { readonly lacks: readonly MessageLack[] }

const isHere = (visit: JobToWriteOf['visits'][number]): boolean =>
  visit.handOver === null && visit.returned === null && visit.scrappedAt === null && visit.takenOffAt === null

/** Findings that the customer still has to answer, of heads that are still worked on. */
export const openFindings = (job: JobToWriteOf): OpenFinding[] =>
  job.visits
    .filter((visit) => !isOver(visit))
    .flatMap((visit) =>
      visit.findings.map((finding) => ({ ...finding, tag: headName(visit.head.tags, job.number, visit.position) })),
    )

/** The wording filled in for a job; `findingId`: the finding that a question is about. */
export function jobText(
  kind: MessageKind,
  job: JobToWriteOf,
  { shop, wording, findingId }: { readonly shop: Shop; readonly wording: Wording; readonly findingId: string | null },
): JobText {
  const finding = openFindings(job).find(({ id }) => id === findingId) ?? null
  const values = valuesOf(job, shop, finding)
  return {
    subject: fillSubject(wording.subject, values),
    body: fillWording(wording.body, values),
    lacks: lacksOf(kind, {
      hasName: values.customer !== undefined,
      hasPromise: job.promiseOn !== null,
      readyHeads: job.visits.filter((visit) => visit.releases.length > 0 && isHere(visit)).length,
      specSheets: job.visits.filter((visit) => visit.releases.length > 0).length,
      finding: finding && { isPriced: finding.askedAt !== null && finding.priceMinor !== null },
    }),
  }
}

/** '' counts as nothing: the line that would say it is left out. */
const given = (text: string | null | undefined): string | undefined => text || undefined

function valuesOf(job: JobToWriteOf, shop: Shop, finding: OpenFinding | null): MessageValues {
  const values: Record<keyof MessageValues, string | undefined> = {
    customer: given(job.customer.contact?.name),
    shop: given(shop.name),
    phone: given(shop.phone),
    job: job.number,
    heads: given(job.visits.map(({ head, position }) => headName(head.tags, job.number, position)).join(', ')),
    promise: given(dayWords(job.promiseOn, shop)),
    link: linkMark,
    finding: given(finding?.what),
    price: given(finding && questionOf(finding, finding.tag, shop).price),
    owed: job.dueMinor > 0 ? formatMoney(job.dueMinor, shop.currency, shop.locale) : undefined,
  }
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined))
}

/** The owner's wording, or the one that comes with the app. */
export const wordingOf = (kind: MessageKind, row: Wording | null | undefined): Wording =>
  row ? { subject: row.subject, body: row.body } : defaultWording[kind]
