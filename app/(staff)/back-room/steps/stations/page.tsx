import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { changedBy } from '../../_components/changed-by'
import { StationsForm } from '../_components/stations-form'

export const metadata = { title: 'Rename stations' }

export default async function StationsPage() {
  const actor = await requirePerson('settings.change')
  const [{ version, rules, last }, manner] = await Promise.all([seeRules(actor), shopLocale()])
  return (
    <>
      <PageHead up={['/back-room/steps', 'Steps and stations']} title="Rename stations">
        <p className="soft">The new name shows everywhere at once. The queues do not change.</p>
      </PageHead>
      <StationsForm version={version} rules={rules} by={changedBy(last, manner)} />
    </>
  )
}
