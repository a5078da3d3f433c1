import { ButtonLink } from '@/app/_components/ui/button-link'
import { can } from '@/lib/core/access/can'
import { seeCasting } from '@/lib/use-cases/castings/see-castings'
import { seeRates } from '@/lib/use-cases/castings/see-rates'
import { seeReferences } from '@/lib/use-cases/flow/see-references'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { ActionButton } from '../../_components/action-button'
import { orNotFound } from '@/lib/web/or-not-found'
import { FiguresShown } from '../_components/figures-shown'
import { OutlinesShown } from '../_components/outlines-shown'
import { BoltsShown, VariantsShown } from '../_components/parts-shown'
import { RatesShown } from '../_components/rates-shown'
import { ReferencesShown } from '../_components/references-shown'
import { retireCastingAction } from '../actions'

export const metadata = { title: 'Casting record' }

export default async function CastingPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params
  const actor = await requirePerson('casting.see')
  const { casting } = await orNotFound(seeCasting(actor, id))
  const rates = await seeRates(actor, id)
  const references = await seeReferences(actor, id)
  const manner = await shopLocale()
  const { version, retired } = casting
  const mayChange = can(actor, 'casting.change')
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/castings">Casting records</BackLink>
        <div className="row spread">
          <h1>{casting.name}</h1>
          {mayChange && (
            <ButtonLink href={`/back-room/castings/${id}/change`} variant="main">
              Change
            </ButtonLink>
          )}
        </div>
        <p>
          {casting.material}, {casting.chamberCount} chambers, {casting.chamberShape}. An angle cut is deep at the{' '}
          {casting.deepEdge} edge.
          {retired && ' Retired: new jobs are not offered it.'}
        </p>
        {casting.note && <p className="soft">{casting.note}</p>}
      </div>
      <RatesShown rates={rates} />
      <ReferencesShown references={references} manner={manner} />
      <OutlinesShown casting={casting} />
      <FiguresShown figures={casting.figures} />
      <BoltsShown bolts={casting.bolts} />
      <VariantsShown variants={casting.variants} money={manner} />
      {mayChange && (
        <section className="part" aria-labelledby="retire">
          <h2 id="retire">{retired ? 'Retired' : 'Retire'}</h2>
          <p>
            {retired
              ? 'Taken back, new jobs are offered it again.'
              : 'New jobs are no longer offered it. Heads that are of this casting keep it.'}
          </p>
          <ActionButton
            action={retireCastingAction}
            input={{ castingId: id, version, retired: !retired }}
            variant={retired ? 'plain' : 'stop'}
          >
            {retired ? 'Take back' : 'Retire this casting'}
          </ActionButton>
        </section>
      )}
    </>
  )
}
