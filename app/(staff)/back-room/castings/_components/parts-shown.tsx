import { Money } from '@/app/_components/ui/money'
import { Table } from '@/app/_components/ui/table'
import { formatBare } from '@/lib/core/units/format-figure'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { CastingSeen } from '@/lib/use-cases/castings/see-castings'
import { boltFigures, boltLabels } from './groups'

const inches = (value: number | null): string => (value === null ? '' : formatBare(value, 'length'))

export function BoltsShown({ bolts }: { bolts: CastingSeen['bolts'] }) {
  if (bolts.length === 0) return null
  return (
    <section className="part" aria-labelledby="single-bolts">
      <h2 id="single-bolts">Single bolts, in inches</h2>
      <Table
        label="Bolts, one a line"
        columns={[
          { id: 'label', label: boltLabels.label, head: true },
          ...boltFigures.map((key) => ({ id: key, label: boltLabels[key], figure: true })),
          { id: 'blind', label: 'Hole goes' },
        ]}
        rows={bolts.map((bolt) => ({
          id: bolt.label,
          cells: {
            label: bolt.label,
            ...Object.fromEntries(boltFigures.map((key) => [key, inches(bolt[key])])),
            blind: bolt.blind ? 'blind' : 'through',
          },
        }))}
      />
    </section>
  )
}

type VariantsProps = { variants: CastingSeen['variants']; money: { currency: string; locale: string } }

export function VariantsShown({ variants, money }: VariantsProps) {
  if (variants.length === 0) return null
  const priced = variants.some(({ costMinor }) => costMinor !== null)
  return (
    <section className="part" aria-labelledby="variants">
      <h2 id="variants">As it can be bought</h2>
      <Table
        label="Variants"
        columns={[
          { id: 'name', label: 'Name', head: true },
          { id: 'nominal', label: 'Nominal', figure: true },
          { id: 'supply', label: 'Supply' },
          { id: 'lead', label: 'Days', figure: true },
          ...(priced ? [{ id: 'cost', label: 'Cost', figure: true }] : []),
        ]}
        rows={variants.map((variant) => ({
          id: variant.variantId,
          cells: {
            name: variant.name,
            nominal: typedFigure({ text: variant.nominalText, unit: 'cc' }),
            supply: `${variant.supply === 'special' ? 'special order' : 'stock'}${variant.cutByMaker ? ', cut by its maker' : ''}`,
            lead: variant.leadDays,
            cost: variant.costMinor !== null && <Money minor={variant.costMinor} {...money} />,
          },
        }))}
      />
    </section>
  )
}
