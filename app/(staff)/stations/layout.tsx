import type { ReactNode } from 'react'

/** Sizes for gloves and arm's length. */
export default function StationLayout({ children }: { children: ReactNode }) {
  return (
    <div data-floor="station" className="contents">
      {children}
    </div>
  )
}
