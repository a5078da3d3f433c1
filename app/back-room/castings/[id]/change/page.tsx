import { Frame } from '@/app/_components/frame'
import { seeCasting } from '@/lib/use-cases/castings/see-castings'
import { shopManner } from '@/lib/use-cases/shop/shop-manner'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../../_components/back-link'
import { changedBy } from '../../../_components/changed-by'
import { seen } from '@/lib/web/page-refusals'
import { ChangeCastingForm } from '../../_components/casting-form'
import { valuesOf } from '../../_components/form-values'

export const metadata = { title: 'Change a casting' }

export default async function ChangeCastingPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params
  const actor = await requirePerson('casting.change', `/back-room/castings/${id}/change`)
  const { casting, last } = await seen(seeCasting(actor, id))
  const manner = await shopManner()
  return (
    <Frame place="back-room" actor={actor}>
      <div className="stack">
        <BackLink href={`/back-room/castings/${id}`}>{casting.name}</BackLink>
        <h1>Change this casting</h1>
        <p className="soft">Plans already made keep the figures they were made with.</p>
      </div>
      <ChangeCastingForm fresh={valuesOf(casting, manner.currencyExponent)} by={changedBy(last, manner)} />
    </Frame>
  )
}
