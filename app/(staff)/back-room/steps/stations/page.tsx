import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { changedBy } from '../../_components/changed-by'
import { StationsForm } from '../_components/stations-form'

export const metadata = { title: 'Rename stations' }

export default async function StationsPage() {
  const actor = await requirePerson('settings.change')
  const [{ version, rules, last }, manner] = await Promise.all([seeRules(actor), shopLocale()])
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/steps">Steps and stations</BackLink>
        <h1>Rename stations</h1>
        <p className="soft">A name changes at once wherever the station is shown. The queues stay what they are.</p>
      </div>
      <StationsForm version={version} rules={rules} by={changedBy(last, manner)} />
    </>
  )
}
