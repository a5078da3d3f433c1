'use client'
import { memo } from 'react'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Loading } from '@/app/_components/ui/loading'
import { Pager } from '@/app/_components/ui/pager'
import type { Station } from '@/lib/core/route/step-ids'
import { QueueList } from '../[station]/_components/queue-list'
import type { FirstQueue } from '@/lib/web/station-view'
import { useKept, useMaybeHere, useOutbox } from './here'
import { NotSent } from './not-sent'
import { usePageTitle } from './page-title'
import type { ShopWords } from './shop-words'
import { queueWithKept } from './with-kept'

type Props = {
  station: Station
  words: ShopWords
  /** The queue that came with the page: shown until the browser is asked what it keeps. */
  first?: FirstQueue
}

/** The queue of a station, with what this tablet did and did not send yet. */
export function QueueView({ station, words: { names, locale, timeZone }, first }: Props) {
  const here = useMaybeHere()
  const { queue: kept, at, away } = useKept()
  const queue = here === null && first ? first.queue : kept
  const { unsent } = useOutbox()
  usePageTitle(names[station])
  return (
    <>
      <div className="row spread">
        <h1>{names[station]}</h1>
        <ButtonLink href="/stations" variant="quiet">
          Another station
        </ButtonLink>
      </div>
      {here && <NotSent asOf={at} locale={locale} timeZone={timeZone} />}
      {queue === null ? (
        away ? (
          <p>This station is not kept on this tablet. It is shown once the server answers.</p>
        ) : (
          <Loading />
        )
      ) : (
        <Lists station={station} queue={queue} unsent={unsent} />
      )}
    </>
  )
}

type ListsProps = {
  station: Station
  queue: NonNullable<ReturnType<typeof useKept>['queue']>
  unsent: ReturnType<typeof useOutbox>['unsent']
}

/** Long, and drawn anew only for another queue or another deed: the keeper hands on the one that it has while they are alike. */
const Lists = memo(function Lists({ station, queue, unsent }: ListsProps) {
  const { ready, started, doneHere } = queueWithKept(queue, unsent)
  const empty = [ready, started, doneHere, queue.today, queue.later].every(({ length }) => length === 0)
  if (empty)
    return (
      <div className="soft">
        <p>No heads at this station.</p>
        <p>A booked head comes here when its step at this station is near.</p>
      </div>
    )
  return (
    <>
      <QueueList title="Done here, not sent yet" station={station} lines={doneHere} />
      <QueueList title="Ready" station={station} lines={ready} none="Nothing is ready." />
      <QueueList title="Started" station={station} lines={started} />
      <QueueList title="Coming today" station={station} lines={queue.today} />
      <QueueList title="Later" station={station} lines={queue.later} folded />
      <Pager page={1} more={queue.more} href={(to) => `/stations/${station}?page=${to}`} />
    </>
  )
})
