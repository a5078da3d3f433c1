'use client'
import { usePathname } from 'next/navigation'
import { useEffect } from 'react'

const yearS = 365 * 24 * 60 * 60

/** The station whose queue was opened last on this device: a scanned tag then opens its step. */
export function RememberStation({ cookie }: { cookie: string }) {
  const station = /^\/stations\/([a-z-]+)$/.exec(usePathname())?.[1]
  useEffect(() => {
    if (station) document.cookie = `${cookie}=${station}; Path=/; Max-Age=${yearS}; SameSite=Lax`
  }, [cookie, station])
  return null
}
