import { can } from '@/lib/core/access/can'
import { typedFigure } from '@/lib/core/units/typed-figure'
import { seeCastings, type CastingSeen } from '@/lib/use-cases/castings/see-castings'
import { pageOf, type ListProps } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { Register } from '../_components/register'
import { shapeWords } from './_components/groups'

export const metadata = { title: 'Casting records' }

const nominalOf = ({ figures }: CastingSeen): string => {
  const nominal = figures.find(({ key }) => key === 'nominalCc')
  return nominal ? typedFigure(nominal) : ''
}

export default async function CastingsPage({ searchParams }: ListProps) {
  const page = pageOf((await searchParams).page)
  const actor = await requirePerson('casting.see')
  return (
    <Register
      title="Casting records"
      href="/back-room/castings"
      add={can(actor, 'casting.change') ? 'Add a casting' : undefined}
      note="The cc rate learned from the shop’s own cuts is on each casting’s page."
      columns={[
        { id: 'name', label: 'Name' },
        { id: 'material', label: 'Material' },
        { id: 'chambers', label: 'Chambers', figure: true },
        { id: 'nominal', label: 'Nominal', figure: true },
        { id: 'shape', label: 'Chamber shape' },
      ]}
      list={await seeCastings(actor, page)}
      page={page}
      nameOf={({ name }) => name}
      cellsOf={(casting) => ({
        material: casting.material,
        chambers: casting.chamberCount,
        nominal: nominalOf(casting),
        shape: shapeWords(casting.chamberShape),
      })}
      empty="No casting records yet. A record holds chambers, deck, valves and bolts of one kind of head."
    />
  )
}
