import { seeCasting } from '@/lib/use-cases/castings/see-castings'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../../_components/back-link'
import { changedBy } from '../../../_components/changed-by'
import { orNotFound } from '@/lib/web/or-not-found'
import { ChangeCastingForm } from '../../_components/casting-form'
import { valuesOf } from '../../_components/form-values'

export const metadata = { title: 'Change a casting' }

export default async function ChangeCastingPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params
  const actor = await requirePerson('casting.change')
  const { casting, last } = await orNotFound(seeCasting(actor, id))
  const manner = await shopLocale()
  return (
    <>
      <div className="stack">
        <BackLink href={`/back-room/castings/${id}`}>{casting.name}</BackLink>
        <h1>Change this casting</h1>
        <p className="soft">Plans already made keep the figures they were made with.</p>
      </div>
      <ChangeCastingForm fresh={valuesOf(casting, manner.currencyExponent)} by={changedBy(last, manner)} />
    </>
  )
}
