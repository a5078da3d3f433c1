import { notFound } from 'next/navigation'
import { cache } from 'react'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Pager } from '@/app/_components/ui/pager'
import { stations, type Station } from '@/lib/core/route/step-ids'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeQueue } from '@/lib/use-cases/stations/see-queue'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeStationNames } from '@/lib/use-cases/stations/see-station-names'
import { pageOf } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { QueueList } from './_components/queue-list'

type Props = {
  params: Promise<{ station: string }>
  searchParams: Promise<{ page?: string | string[] }>
}

const stationOf = (text: string): Station => stations.find((station) => station === text) ?? notFound()

const seeNames = cache(async () => seeStationNames(await requirePerson('job.see')))

export async function generateMetadata({ params }: Pick<Props, 'params'>) {
  return { title: (await seeNames())[stationOf((await params).station)] }
}

export default async function StationPage({ params, searchParams }: Props) {
  const page = pageOf((await searchParams).page)
  const station = stationOf((await params).station)
  const actor = await requirePerson('job.see')
  const newest = await newestChange()
  const [queue, names, { locale }] = await Promise.all([seeQueue(actor, station, page), seeNames(), shopLocale()])
  const empty = queue.ready.length + queue.started.length + queue.today.length + queue.later.length === 0
  return (
    <>
      <AutoRefresh newest={newest} />
      <div className="row spread">
        <h1>{names[station]}</h1>
        <ButtonLink href="/stations" variant="quiet">
          Another station
        </ButtonLink>
      </div>
      {empty ? (
        <p className="soft">No heads at this station.</p>
      ) : (
        <>
          <QueueList locale={locale} title="Ready" station={station} lines={queue.ready} none="Nothing is ready." />
          <QueueList locale={locale} title="Started" station={station} lines={queue.started} />
          <QueueList locale={locale} title="Coming today" station={station} lines={queue.today} />
          <QueueList locale={locale} title="Later" station={station} lines={queue.later} folded />
        </>
      )}
      <Pager page={page} more={queue.more} href={(to) => `/stations/${station}?page=${to}`} />
    </>
  )
}
