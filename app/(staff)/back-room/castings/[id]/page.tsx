import { ButtonLink } from '@/app/_components/ui/button-link'
import { can } from '@/lib/core/access/can'
import { seeCasting } from '@/lib/use-cases/castings/see-castings'
import { seeRates } from '@/lib/use-cases/castings/see-rates'
import { seeReferences } from '@/lib/use-cases/flow/see-references'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { entryPage } from '../../_components/entry-page'
import { PageHead } from '../../_components/page-head'
import { RetirePart } from '../../_components/retire-part'
import { FiguresShown } from '../_components/figures-shown'
import { shapeWords } from '../_components/groups'
import { OutlinesShown } from '../_components/outlines-shown'
import { BoltsShown, VariantsShown } from '../_components/parts-shown'
import { RatesShown } from '../_components/rates-shown'
import { ReferencesShown } from '../_components/references-shown'
import { WantedOfCasting } from '../_components/wanted-of-casting'
import { retireCastingAction } from '../actions'

const page = entryPage('casting.see', seeCasting, ({ casting }) => casting.name)

export const generateMetadata = page.generateMetadata

export default async function CastingPage(props: Parameters<typeof page.see>[0]) {
  const { actor, casting } = await page.see(props)
  const { id: castingId, retired } = casting
  const isFlatDeck = casting.chamberShape === 'flat-deck'
  const mayChange = can(actor, 'casting.change')
  const [rates, references, manner] = await Promise.all([
    seeRates(actor, castingId),
    seeReferences(actor, castingId),
    shopLocale(),
  ])
  return (
    <>
      <PageHead
        up={['/back-room/castings', 'Casting records']}
        title={casting.name}
        action={
          mayChange && (
            <ButtonLink href={`/back-room/castings/${castingId}/change`} variant="main">
              Change
            </ButtonLink>
          )
        }
      >
        <p>
          {casting.material}, {casting.chamberCount} chambers, {shapeWords(casting.chamberShape)}. Deep edge of an angle
          cut: {casting.deepEdge}.{retired && ' Retired: not offered for new jobs.'}
        </p>
        {casting.note && <p className="soft">{casting.note}</p>}
      </PageHead>
      {!isFlatDeck && <RatesShown rates={rates} mayRule={mayChange} />}
      <ReferencesShown references={references} manner={manner} />
      {!isFlatDeck && <OutlinesShown casting={casting} />}
      <FiguresShown figures={casting.figures} shape={casting.chamberShape} />
      <BoltsShown bolts={casting.bolts} />
      <WantedOfCasting casting={casting} mayChange={mayChange} />
      <VariantsShown variants={casting.variants} money={manner} />
      {mayChange && (
        <RetirePart
          what="casting"
          entry={casting}
          idAs="castingId"
          action={retireCastingAction}
          retire="No longer offered for new jobs. Heads of this casting keep it."
          restore="Offers it for new jobs again."
        />
      )}
    </>
  )
}
