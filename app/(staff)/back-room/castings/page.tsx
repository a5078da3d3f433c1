import Link from 'next/link'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { Table } from '@/app/_components/ui/table'
import { can } from '@/lib/core/access/can'
import { typedFigure } from '@/lib/core/units/typed-figure'
import { seeCastings, type CastingSeen } from '@/lib/use-cases/castings/see-castings'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../_components/back-link'

export const metadata = { title: 'Casting records' }

const columns = [
  { id: 'name', label: 'Name', head: true },
  { id: 'material', label: 'Material' },
  { id: 'chambers', label: 'Chambers', figure: true },
  { id: 'nominal', label: 'Nominal', figure: true },
  { id: 'shape', label: 'Chamber' },
]

const rowOf = (casting: CastingSeen) => {
  const nominal = casting.figures.find(({ key }) => key === 'nominalCc')
  return {
    id: casting.id,
    cells: {
      name: <Link href={`/back-room/castings/${casting.id}`}>{casting.name}</Link>,
      material: casting.material,
      chambers: casting.chamberCount,
      nominal: nominal ? typedFigure(nominal) : '',
      shape: casting.retired ? 'retired' : casting.chamberShape,
    },
  }
}

export default async function CastingsPage() {
  const actor = await requirePerson('casting.see')
  const castings = await seeCastings(actor)
  const mayChange = can(actor, 'casting.change')
  return (
    <>
      <div className="stack">
        {can(actor, 'back-room.see') && <BackLink href="/back-room">Back room</BackLink>}
        <div className="row spread">
          <h1>Casting records</h1>
          {mayChange && (
            <ButtonLink href="/back-room/castings/new" variant="main">
              Add a casting
            </ButtonLink>
          )}
        </div>
        <p className="soft">The rate that the shop’s own cuts taught of a casting stands on its page.</p>
      </div>
      <Table
        label="Casting records"
        columns={columns}
        rows={castings.map(rowOf)}
        empty={
          <EmptyState title="No casting records yet">
            <p>
              A record holds what the shop knows of one kind of head: chambers, deck, valves, bolts. Booking a pair and
              planning its cut start from it.
            </p>
          </EmptyState>
        }
      />
    </>
  )
}
