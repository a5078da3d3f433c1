import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Money } from '@/app/_components/ui/money'
import { Table } from '@/app/_components/ui/table'
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
        rows={account.prices.map(({ id, text, quantity, unitMinor }) => ({
          id,
          cells: { text, quantity, unit: money(unitMinor) },
        }))}
      />
      <DefinitionList
        items={[
          { label: 'Tax', value: money(account.taxMinor) },
          { label: 'Total', value: money(account.totalMinor) },
          { label: 'Paid', value: money(account.paidMinor) },
          { label: 'Still to pay', value: money(account.dueMinor) },
        ]}
      />
    </section>
  )
}
