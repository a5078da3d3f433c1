import { seeSettings } from '@/lib/use-cases/settings/see-settings'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { changedBy } from '../../_components/changed-by'
import { SettingsForm } from '../_components/settings-form'

export const metadata = { title: 'Change the limits' }

export default async function ChangeSettingsPage() {
  const actor = await requirePerson('settings.change')
  const { current, history } = await seeSettings(actor)
  const by = changedBy(history[0] ?? null, await shopLocale())
  return (
    <>
      <PageHead up={['/back-room/settings', 'Limits and tolerances']} title="Change the limits">
        <p className="soft">
          New limits apply to heads booked from now on. For heads in house you choose under Steps and stations, and see
          first what would change.
        </p>
      </PageHead>
      <SettingsForm version={current.version} settings={current.values} by={by} />
    </>
  )
}
