import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { creditLeft } from '@/lib/core/money/credit'
import { formatAmount } from '@/lib/core/money/amount'
import { taxWords } from '@/lib/core/money/percent'
import { lineWords } from '@/lib/core/money/price-of'
import { db } from '@/lib/data/db'
import { creditsOf, moneyPaperById } from '@/lib/data/money-papers'
import { shopOf } from '@/lib/data/shop'

export type InvoiceView = {
  readonly id: string
  readonly number: string
  readonly jobNumber: string
  readonly customer: string
  readonly at: Date
  readonly totalMinor: number
  readonly creditedMinor: number
  readonly lines: readonly {
    readonly text: string
    readonly tax: string
    readonly netMinor: number
    /** What no credit note took back yet, without tax. */
    readonly leftMinor: number
    /** The same as it is typed, without a sign. */
    readonly left: string
  }[]
  readonly credits: readonly { readonly number: string; readonly totalMinor: number; readonly reason: string }[]
  readonly timeZone: string
  readonly locale: string
  readonly currency: string
}

/** An invoice, and what of it can still be credited. */
export async function seeInvoice(actor: Actor, invoiceId: string): Promise<InvoiceView> {
  must(allow(actor, 'price.see'))
  const client = await db()
  const { said, kind, at } = await moneyPaperById(client, invoiceId)
  if (kind !== 'invoice') throw new RefusedError({ code: 'not-found', message: 'There is no such invoice here.' })
  const shop = await shopOf(client)
  const credits = await creditsOf(client, invoiceId)
  const left = creditLeft(
    said.lines,
    credits.flatMap(({ lines }) => lines),
  )
  return {
    ...{ id: invoiceId, number: said.number, jobNumber: said.jobNumber, customer: said.customer.name, at },
    totalMinor: said.totalMinor,
    creditedMinor: credits.reduce((sum, { totalMinor }) => sum + totalMinor, 0),
    lines: said.lines.map((line, place) => {
      const leftMinor = left[place] ?? 0
      return {
        text: lineWords(line),
        tax: taxWords(line.taxName, line.taxMillionths),
        netMinor: line.netMinor,
        leftMinor,
        left: formatAmount(Math.abs(leftMinor), shop.currencyExponent),
      }
    }),
    credits: credits.map(({ number, totalMinor, reason }) => ({ number, totalMinor, reason })),
    ...{ timeZone: shop.timeZone, locale: shop.locale, currency: shop.currency },
  }
}
