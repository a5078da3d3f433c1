import type { PricePick } from '@/lib/core/money/price-pick'
import { workLabel } from '@/lib/core/route/presets'
import type { RouteRules } from '@/lib/core/route/rules'
import type { WorkId } from '@/lib/core/route/step-ids'
import type { BookJobForm } from '@/lib/schemas/job'

type Lines = BookJobForm['prices']

/** The step that a line of ordered work is priced as: every flow run is a flow run. */
const stepOf = (work: WorkId): string => (work.startsWith('flow-') ? 'flow' : work)

/** Lines of the list for ordered work that has none yet: so much a head, for all heads. */
export function linesToAdd(
  { ordered, prices, heads }: Pick<BookJobForm, 'ordered' | 'prices' | 'heads'>,
  list: readonly PricePick[],
  rules: RouteRules,
): Lines {
  const known = new Set(prices.map(({ text }) => text))
  return ordered.flatMap(({ work }) => {
    const items = list.filter(({ stepId }) => stepId !== '' && stepId === stepOf(work))
    return items.flatMap((item) => {
      const text = stepOf(work) === 'flow' ? workLabel(work, rules) : item.text
      if (known.has(text)) return []
      return [{ text, quantity: String(heads.length), unitPrice: item.unitPrice, tax: item.tax, perHead: true }]
    })
  })
}

/** Lines that are for each head follow the number of heads. */
export const forHeads = (prices: Lines, heads: number): Lines =>
  prices.map((line) => (line.perHead === true ? { ...line, quantity: String(heads) } : line))
