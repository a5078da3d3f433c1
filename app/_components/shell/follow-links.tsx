'use client'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'
import { followed } from './followed'

/** Opens the links of all pages without loading the page anew: one listener in place of one in each of hundreds. */
export function FollowLinks() {
  const router = useRouter()
  useEffect(() => {
    // Comes after the page's own listeners: what one of them has taken is left to it.
    const follow = (event: MouseEvent) => {
      const link = event.target instanceof Element ? event.target.closest('a') : null
      const href = link && followed(event, link)
      if (!href) return
      event.preventDefault()
      router.push(href)
    }
    document.addEventListener('click', follow)
    return () => document.removeEventListener('click', follow)
  }, [router])
  return null
}
