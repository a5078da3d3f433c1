'use client'
import { useRouter } from 'next/navigation'
import { useFollow } from './use-follow'

/**
 * Draws the page again when anything changed in the shop. `newest` is read before the page's data, and new with the page
 * after a change made here.
 */
export function AutoRefresh({ newest }: { newest: number }) {
  const router = useRouter()
  useFollow(newest, () => router.refresh())
  return null
}
