import Link from 'next/link'
import { Live } from '@/app/_components/live'
import { Frame } from '@/app/_components/frame'
import { stations } from '@/lib/core/route/types'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeStations } from '@/lib/use-cases/stations/see-stations'
import { seeStationNames } from '@/lib/use-cases/stations/see-station-names'
import { requirePerson } from '@/lib/web/require-actor'
import styles from './stations.module.css'

export const metadata = { title: 'Stations' }

export default async function StationsPage() {
  const actor = await requirePerson('job.see', '/stations')
  const [counts, names, newest] = await Promise.all([seeStations(actor), seeStationNames(actor), newestChange()])
  return (
    <Frame place="stations" actor={actor}>
      <Live newest={newest} />
      <h1>Where are you standing?</h1>
      <ul className={styles.rack}>
        {stations.map((station) => (
          <li key={station}>
            <Link href={`/stations/${station}`} className={styles.station}>
              <span>{names[station]}</span>
              <span className={styles.count}>
                {counts[station] ?? 0}
                <span className="visually-hidden"> to do now</span>
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </Frame>
  )
}
