import { seeSettings } from '@/lib/use-cases/settings/see-settings'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { changedBy } from '../../_components/changed-by'
import { SettingsForm } from '../_components/settings-form'

export const metadata = { title: 'Change the limits' }

export default async function ChangeSettingsPage() {
  const actor = await requirePerson('settings.change')
  const { current, history } = await seeSettings(actor)
  const by = changedBy(history[0] ?? null, await shopLocale())
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/settings">Limits and tolerances</BackLink>
        <h1>Change the limits</h1>
        <p className="soft">
          They hold for the heads booked from now on. Those in house follow when they are told to, and you see first
          what that would change.
        </p>
      </div>
      <SettingsForm version={current.version} settings={current.values} by={by} />
    </>
  )
}
