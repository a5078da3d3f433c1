import { seeSettings } from '@/lib/use-cases/settings/see-settings'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { changedBy } from '../../_components/changed-by'
import { ShopWantedForm } from '../_components/wanted-form'

export const metadata = { title: 'Wanted figures of the shop' }

export default async function ShopWantedPage() {
  const actor = await requirePerson('settings.change')
  const { current, history } = await seeSettings(actor)
  const by = changedBy(history[0] ?? null, await shopLocale())
  return (
    <>
      <PageHead up={['/back-room/settings', 'Limits and tolerances']} title="Wanted figures of the shop">
        <p className="soft">
          What the benches work to where neither the job nor the casting record says it, for heads booked from now on.
          The makers of head, valves and springs come first.
        </p>
      </PageHead>
      <ShopWantedForm version={current.version} wanted={current.values.wanted} by={by} />
    </>
  )
}
