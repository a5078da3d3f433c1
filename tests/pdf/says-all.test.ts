import { describe, expect, it } from 'vitest'
import { estimatePaper } from '@/lib/pdf/estimate'
import { outsideSheet } from '@/lib/pdf/outside-sheet'
import { claimTicket } from '@/lib/pdf/claim-ticket'
import { handOverSlip } from '@/lib/pdf/hand-over-slip'
import { readPdf } from './read-pdf'
import { claimTicketOf, estimate, handOverSlipOf } from './sample-desk-papers'
import { outside, setting } from './sample-papers'

/** Texts that steer, or are drawn: they stand on no paper as words. */
const notWords: readonly string[] = [
  'language',
  'kind',
  'code',
  'chamberShape',
  'drawing',
  'qrText',
  'needs',
  'effort',
  'start',
]

type Marked<T> = { readonly data: T; readonly marks: ReadonlyMap<string, string> }

/** The same data with a mark of its own for each text, an empty one too, by the place where it stands. */
function marked<T>(data: T): Marked<T> {
  const marks = new Map<string, string>()
  const mark = (value: unknown, place: string): unknown => {
    if (typeof value === 'string') {
      const text = `m${marks.size}m`
      marks.set(place, text)
      return text
    }
    if (Array.isArray(value)) return value.map((each, at) => mark(each, `${place}.${at}`))
    if (typeof value !== 'object' || value === null) return value
    return Object.fromEntries(
      Object.entries(value).map(([key, each]) => [key, notWords.includes(key) ? each : mark(each, `${place}.${key}`)]),
    )
  }
  return { data: mark(data, '') as T, marks }
}

const textOf = async (bytes: Uint8Array): Promise<string> => (await readPdf(bytes)).text.replace(/\s+/g, ' ')

/** Places whose text the paper does not have. */
const unsaid = (text: string, { marks }: Marked<unknown>): string[] =>
  [...marks].filter(([, each]) => !text.includes(each)).map(([place]) => place)

describe('a paper says all that it was given', () => {
  it('receipt: who took what, each line, and each sum under its own name', async () => {
    const of = marked(handOverSlipOf)
    const text = await textOf(await handOverSlip(of.data, setting))
    expect(unsaid(text, of)).toEqual([])
    const { net, tax, total, balanceLabel, balance } = of.data
    expect(text).toContain(`Net ${net} Tax ${tax} Total ${total}`)
    expect(text).toContain(`${balanceLabel} ${balance}`)
  })

  it('claim ticket', async () => {
    const of = marked(claimTicketOf)
    expect(unsaid(await textOf(await claimTicket(of.data, setting)), of)).toEqual([])
  })

  it('estimate', async () => {
    const of = marked(estimate)
    expect(unsaid(await textOf(await estimatePaper(of.data, setting)), of)).toEqual([])
  })

  it('sheet for a vendor', async () => {
    const of = marked({ ...outside, redo: 'for nothing' })
    expect(unsaid(await textOf(await outsideSheet(of.data, setting)), of)).toEqual([])
  })
})
