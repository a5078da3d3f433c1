import type { ReactNode } from 'react'
import { stationCookie } from '@/lib/web/device-station'
import { RememberStation } from './_components/remember-station'

/** Sizes for gloves and arm's length. */
export default function StationLayout({ children }: { children: ReactNode }) {
  return (
    <div data-floor="station" className="contents">
      <RememberStation cookie={stationCookie} />
      {children}
    </div>
  )
}
