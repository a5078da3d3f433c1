import { When } from '@/app/_components/ui/when'
import { stations } from '@/lib/core/route/step-ids'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeStationNames } from '@/lib/use-cases/stations/see-station-names'
import { seeTablet } from '@/lib/use-cases/tablets/see-tablets'
import { ActionButton } from '../../_components/action-button'
import { changedBy } from '../../_components/changed-by'
import { entryPage } from '../../_components/entry-page'
import { PageHead } from '../../_components/page-head'
import { revokeTabletAction } from '../actions'
import { TabletForm } from '../_components/tablet-form'

const page = entryPage('tablet.change', seeTablet, ({ tablet }) => tablet.name)

export const generateMetadata = page.generateMetadata

export default async function TabletPage(props: Parameters<typeof page.see>[0]) {
  const { actor, tablet, last } = await page.see(props)
  const [names, locale] = [await seeStationNames(actor), await shopLocale()]
  const options = stations.map((station) => ({ value: station, label: names[station] }))
  return (
    <>
      <PageHead up={['/back-room/tablets', 'Tablets']} title={tablet.name}>
        <p className="soft">
          Enrolled <When at={tablet.enrolledAt} zone={locale.timeZone} locale={locale.locale} /> by {tablet.by}. Last
          seen <When at={tablet.lastSeenAt} zone={locale.timeZone} locale={locale.locale} />
          {tablet.revoked && '. Revoked: nobody signs in on it with a PIN.'}
        </p>
      </PageHead>
      <section className="part" aria-labelledby="name">
        <h2 id="name">Name and station</h2>
        <TabletForm tablet={tablet} stations={options} by={changedBy(last, locale)} />
      </section>
      {!tablet.revoked && (
        <section className="part" aria-labelledby="revoke">
          <h2 id="revoke">Revoke</h2>
          <p>Signs everybody out on it at once. It needs a new code to be enrolled again.</p>
          <ActionButton action={revokeTabletAction} input={{ tabletId: tablet.id }} variant="stop">
            Revoke this tablet
          </ActionButton>
        </section>
      )}
    </>
  )
}
