import { AutoRefresh } from '@/app/_components/auto-refresh'
import { When } from '@/app/_components/ui/when'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeTablets } from '@/lib/use-cases/tablets/see-tablets'
import { pageOf, type ListProps } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { ActionButton } from '../_components/action-button'
import { Register } from '../_components/register'
import { revokeTabletAction } from './actions'

export const metadata = { title: 'Tablets' }

export default async function TabletsPage({ searchParams }: ListProps) {
  const page = pageOf((await searchParams).page)
  const actor = await requirePerson('tablet.change')
  const newest = await newestChange()
  const [{ rows, more }, { timeZone, locale }] = await Promise.all([seeTablets(actor, page), shopLocale()])
  return (
    <>
      <AutoRefresh newest={newest} />
      <Register
        title="Tablets"
        href="/back-room/tablets"
        add="Enrol a tablet"
        note="On an enrolled tablet people sign in with a PIN, with a machinist’s rights."
        columns={[
          { id: 'name', label: 'Name' },
          { id: 'seen', label: 'Station, last seen' },
          { id: 'revoke', label: 'Revoke' },
        ]}
        list={{ rows: rows.map((tablet) => ({ ...tablet, retired: tablet.revoked })), more }}
        page={page}
        ended="revoked"
        nameOf={({ name }) => name}
        cellsOf={({ id, stationName, lastSeenAt, revoked }) => ({
          seen: (
            <>
              {stationName}
              <br />
              <When at={lastSeenAt} zone={timeZone} locale={locale} style="date" />,{' '}
              <When at={lastSeenAt} zone={timeZone} locale={locale} style="time" />
            </>
          ),
          revoke: revoked ? null : (
            <ActionButton action={revokeTabletAction} input={{ tabletId: id }} variant="stop">
              Revoke
            </ActionButton>
          ),
        })}
        empty="No tablets yet. Enrol one, and people sign in on it with a PIN."
      />
    </>
  )
}
