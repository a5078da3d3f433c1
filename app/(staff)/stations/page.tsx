import { AutoRefresh } from '@/app/_components/auto-refresh'
import { stations } from '@/lib/core/route/step-ids'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeStations } from '@/lib/use-cases/stations/see-stations'
import { seeStationNames } from '@/lib/use-cases/stations/see-station-names'
import { requirePerson } from '@/lib/web/require-actor'
import { AtRack } from './_app/at-rack'
import { StationLink } from './_app/station-link'
import styles from './stations.module.css'

export const metadata = { title: 'Stations' }

export default async function StationsPage() {
  const actor = await requirePerson('job.see')
  const newest = await newestChange()
  const [counts, names] = await Promise.all([seeStations(actor), seeStationNames(actor)])
  return (
    <AtRack>
      <AutoRefresh newest={newest} />
      <h1>Choose your station</h1>
      <ul className={styles.rack}>
        {stations.map((station) => (
          <li key={station}>
            <StationLink href={`/stations/${station}`} className={styles.station}>
              <span>{names[station]}</span>
              <span className={styles.count}>
                {counts[station] ?? 0}
                <span className="visually-hidden"> to do now</span>
              </span>
            </StationLink>
          </li>
        ))}
      </ul>
    </AtRack>
  )
}
