import { formatMoney } from '@/lib/core/money/format-money'
import { totals } from '@/lib/core/money/totals'
import { workLabel } from '@/lib/core/route/presets'
import type { WorkId } from '@/lib/core/route/step-ids'
import type { VisitRecord } from '@/lib/data/visit-records'
import { dateWords, type WhenManner } from '@/lib/core/shop/when-words'

export type Manner = WhenManner & { readonly currency: string }

type Finding = VisitRecord['findings'][number]

/** A finding as its customer sees it: a question with a price, or the answer that was given. */
export type Question = {
  readonly id: string
  readonly version: number
  readonly tag: string
  readonly what: string
  /** Tax and all, as the shop writes money; null: not known yet, and then there is nothing to answer. */
  readonly price: string | null
  /** Asked, and costs nothing. */
  readonly free: boolean
  /** The tax in it; '' when there is none. */
  readonly tax: string
  /** The work that a yes adds, in words. */
  readonly adds: readonly string[]
  /** Price and work in one line, to hold what was read against what stands now. */
  readonly terms: string
  readonly answered: { readonly answer: 'yes' | 'no'; readonly on: string; readonly by: string } | null
}

export function questionOf(finding: Finding, tag: string, shop: Manner): Question {
  const { priceMinor, taxMillionths, answeredAt } = finding
  const { totalMinor, taxMinor } = totals(
    [{ quantityThousandths: 1000, unitMinor: priceMinor ?? 0, taxMillionths }],
    [],
  )
  const money = (minor: number) => formatMoney(minor, shop.currency, shop.locale)
  const free = priceMinor !== null && totalMinor === 0
  const price = priceMinor === null ? null : free ? 'no charge' : money(totalMinor)
  const tax = taxMinor === 0 ? '' : money(taxMinor)
  const adds = finding.addsWork
    .split(',')
    .filter(Boolean)
    .map((work) => workLabel(work as WorkId))
  return {
    id: finding.id,
    version: finding.version,
    tag,
    what: finding.what,
    price,
    free,
    tax,
    adds,
    terms: termsOf(price, tax, adds),
    answered:
      finding.answer === null
        ? null
        : {
            answer: finding.answer as 'yes' | 'no',
            on: answeredAt === null ? '' : dateWords(answeredAt, shop),
            by: finding.answeredBy,
          },
  }
}

function termsOf(price: string | null, tax: string, adds: readonly string[]): string {
  const cost = price === null ? 'no price yet' : `${price}${tax === '' ? '' : ` with ${tax} tax included`}`
  return adds.length === 0 ? `${cost}.` : `${cost}; adds: ${adds.join(', ')}.`
}

/** How a question stands now, for somebody whose page showed it otherwise. */
export const standing = ({ answered, terms }: Question): string =>
  answered === null
    ? terms
    : `Answered on ${answered.on}: ${answered.answer}${answered.by === '' ? '' : `, by ${answered.by}`}.`

/** What says that the work on a head is at its end, however much else of the visit was read. */
export type Ends = Pick<VisitRecord, 'scrappedAt' | 'takenOffAt'> & {
  readonly releases: readonly unknown[]
  readonly returned: unknown
  readonly handOver: unknown
}

/** What was never asked stays the shop's own; of a head that is done with, only what was answered is left to show. */
export const isOnLink = (finding: Pick<Finding, 'askedAt' | 'answer'>, visit: Ends): boolean =>
  finding.askedAt !== null && (finding.answer !== null || !isOver(visit))

/** Released, returned, handed over or scrapped: there is nothing left to add to or to leave out. */
export const isOver = (visit: Ends): boolean =>
  visit.releases.length > 0 ||
  visit.returned !== null ||
  visit.handOver !== null ||
  visit.scrappedAt !== null ||
  visit.takenOffAt !== null
