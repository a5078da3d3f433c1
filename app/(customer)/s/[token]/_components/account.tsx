import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Money } from '@/app/_components/ui/money'
import { Table } from '@/app/_components/ui/table'
import { percentOf } from '@/lib/core/money/percent'
import { lineWords } from '@/lib/core/money/price-of'
import { quantityText } from '@/lib/core/money/quantity'
import { balanceLabel } from '@/lib/words/money'
import type { LinkView } from '@/lib/use-cases/links/see-by-link'

type Props = { account: NonNullable<LinkView['account']>; currency: string; locale: string }

/** Shown only where the shop shows prices on this job's link. */
export function Account({ account, currency, locale }: Props) {
  const money = (minor: number) => <Money minor={minor} currency={currency} locale={locale} />
  return (
    <section className="stack part" aria-label="Prices">
      <h2>Prices</h2>
      <Table
        label="Prices"
        columns={[
          { id: 'text', label: 'For', head: true },
          { id: 'quantity', label: 'Number', figure: true },
          { id: 'unit', label: 'Each', figure: true },
        ]}
        rows={account.prices.map((line) => ({
          id: line.id,
          cells: {
            text: lineWords(line),
            quantity: quantityText(line.quantityThousandths),
            unit: money(line.unitMinor),
          },
        }))}
      />
      <DefinitionList
        items={[
          ...account.taxes.map((rate) => ({
            label: `${rate.name === '' ? 'Tax' : rate.name}, ${percentOf(rate.rateMillionths)}`,
            value: money(rate.taxMinor),
          })),
          { label: 'Total', value: money(account.totalMinor) },
          { label: 'Paid', value: money(account.paidMinor) },
          { label: balanceLabel(account.balance, 'customer'), value: money(account.balance.minor) },
        ]}
      />
    </section>
  )
}
