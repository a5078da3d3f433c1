import { stations } from '@/lib/core/route/step-ids'
import { Notice } from '@/app/_components/ui/notice'
import { seeEnrolling } from '@/lib/use-cases/tablets/see-enrolling'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { CodeForm } from '../_components/code-form'

export const metadata = { title: 'Enrol a tablet' }

export default async function NewTabletPage() {
  const { stationNames, address, isLocal } = await seeEnrolling(await requirePerson('tablet.change'))
  const options = stations.map((station) => ({ value: station, label: stationNames[station] }))
  return (
    <>
      <PageHead up={['/back-room/tablets', 'Tablets']} title="Enrol a tablet" />
      {isLocal && (
        <Notice kind="caution" title="This machine only" live={false}>
          <p>No other device can open {address} yet. README says how to open Brasstag to the shop’s network.</p>
        </Notice>
      )}
      <CodeForm stations={options} address={address} />
    </>
  )
}
