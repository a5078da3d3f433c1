import { usePathname, useSearchParams } from 'next/navigation'
import { useMemo } from 'react'
import { placeOf, type Place } from './place'

/** What the address in the bar shows. */
export function usePlace(): Place | null {
  const address = `${usePathname()}?${useSearchParams()}`
  return useMemo(() => placeOf(address), [address])
}
