import { stations } from '@/lib/core/route/step-ids'
import { seeStationNames } from '@/lib/use-cases/stations/see-station-names'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { CodeForm } from '../_components/code-form'

export const metadata = { title: 'Enrol a tablet' }

export default async function NewTabletPage() {
  const names = await seeStationNames(await requirePerson('tablet.change'))
  return (
    <>
      <PageHead up={['/back-room/tablets', 'Tablets']} title="Enrol a tablet" />
      <CodeForm stations={stations.map((station) => ({ value: station, label: names[station] }))} />
    </>
  )
}
