import { notFound } from 'next/navigation'
import { Pager } from '@/app/_components/ui/pager'
import { stations, type Station } from '@/lib/core/route/step-ids'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeQueue } from '@/lib/use-cases/stations/see-queue'
import { seeStationNames } from '@/lib/use-cases/stations/see-station-names'
import { pageOf } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { buildId, firstQueue } from '@/lib/web/station-view'
import { Changed } from '../_app/changed'
import { OwnQueue } from '../_app/own-queue'
import { QueueList } from './_components/queue-list'

type Props = {
  params: Promise<{ station: string }>
  searchParams: Promise<{ page?: string | string[] }>
}

export const metadata = { title: 'Stations' }

const stationOf = (text: string): Station => stations.find((station) => station === text) ?? notFound()

/** What the station app goes on with; a later page of the queue, which no tablet keeps, comes from here alone. */
export default async function StationPage({ params, searchParams }: Props) {
  const page = pageOf((await searchParams).page)
  const station = stationOf((await params).station)
  await requirePerson('job.see')
  return page > 1 ? <LaterPage station={station} page={page} /> : <FirstPage station={station} />
}

async function FirstPage({ station }: { station: Station }) {
  const actor = await requirePerson('job.see')
  const [first, names, { locale, timeZone }] = await Promise.all([
    firstQueue(actor, station, new Date()),
    seeStationNames(actor),
    shopLocale(),
  ])
  return (
    <>
      <Changed newest={first.newest} />
      <OwnQueue first={first} words={{ names, locale, timeZone, build: buildId() }} />
    </>
  )
}

async function LaterPage({ station, page }: { station: Station; page: number }) {
  const actor = await requirePerson('job.see')
  const [queue, names] = await Promise.all([seeQueue(actor, station, page), seeStationNames(actor)])
  return (
    <>
      <h1>{names[station]}</h1>
      <QueueList title="Ready" station={station} lines={queue.ready} />
      <QueueList title="Started" station={station} lines={queue.started} />
      <QueueList title="Coming today" station={station} lines={queue.today} />
      <QueueList title="Later" station={station} lines={queue.later} folded />
      <Pager page={page} more={queue.more} href={(to) => `/stations/${station}?page=${to}`} />
    </>
  )
}
