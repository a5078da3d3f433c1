'use client'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'

const everyMs = 2000

/** Somebody is typing or choosing: a change made elsewhere must not come under the fingers. */
function isEditing(): boolean {
  const focused = document.activeElement
  return focused !== null && focused.closest('form, dialog[open], [data-hands-on]') !== null
}

/** Asks now and then whether anything changed in the shop, and if so draws the page again. */
export function AutoRefresh({ newest }: { newest: number }) {
  const router = useRouter()
  useEffect(() => {
    let known = newest
    const timer = setInterval(async () => {
      if (document.hidden || isEditing()) return
      const answer = await fetch('/api/changes', { cache: 'no-store' }).catch(() => null)
      if (!answer?.ok) return
      const now = ((await answer.json()) as { newest: number }).newest
      if (now === known || isEditing()) return
      known = now
      router.refresh()
    }, everyMs)
    return () => clearInterval(timer)
  }, [newest, router])
  return null
}
