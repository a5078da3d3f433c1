import { seeCasting } from '@/lib/use-cases/castings/see-castings'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { changedBy } from '../../../_components/changed-by'
import { entryPage } from '../../../_components/entry-page'
import { PageHead } from '../../../_components/page-head'
import { ChangeCastingForm } from '../../_components/casting-form'
import { valuesOf } from '../../_components/form-values'

const page = entryPage('casting.change', seeCasting, ({ casting }) => `Change ${casting.name}`)

export const generateMetadata = page.generateMetadata

export default async function ChangeCastingPage(props: Parameters<typeof page.see>[0]) {
  const { casting, last } = await page.see(props)
  const manner = await shopLocale()
  return (
    <>
      <PageHead up={[`/back-room/castings/${casting.id}`, casting.name]} title="Change this casting">
        <p className="soft">Plans already made keep the figures they were made with.</p>
      </PageHead>
      <ChangeCastingForm fresh={valuesOf(casting, manner.currencyExponent)} by={changedBy(last, manner)} />
    </>
  )
}
