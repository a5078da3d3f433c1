import type { ReactNode } from 'react'
import { stationCookie } from '@/lib/web/device-station'
import { RememberStation } from './_components/remember-station'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { seeStationNames } from '@/lib/use-cases/stations/see-station-names'
import { requirePerson } from '@/lib/web/require-actor'
import { buildId } from '@/lib/web/station-view'
import { StationApp } from './_app/station-app'

/** Sizes for gloves and arm's length; the app that draws queues and steps lasts from one to the other. */
export default async function StationLayout({ children }: { children: ReactNode }) {
  const actor = await requirePerson('job.see')
  const [names, { locale, timeZone }] = await Promise.all([seeStationNames(actor), shopLocale()])
  return (
    <div data-floor="station" className="contents">
      <RememberStation cookie={stationCookie} />
      <StationApp
        person={{ id: actor.personId, name: actor.name }}
        words={{ names, locale, timeZone, build: buildId() }}
      >
        {children}
      </StationApp>
    </div>
  )
}
