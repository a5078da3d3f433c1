import { useEffect, useRef } from 'react'

const everyMs = 2000
/** After the last key or tap: a change made elsewhere must not come under the fingers. */
const quietMs = 1500

/** Somebody is at a field, a form or a figure. */
export function isEditing(): boolean {
  const focused = document.activeElement
  return focused !== null && focused.closest('form, dialog[open], [data-hands-on]') !== null
}

/** What is being sent from here brings the page with it. */
const isSending = (): boolean => document.querySelector('[aria-busy="true"]') !== null

/**
 * Asks now and then whether anything changed in the shop, and if so calls `onNewer`; not while somebody types, taps or
 * sends. `newest` is the number of the newest change that is shown.
 */
export function useFollow(newest: number, onNewer: () => void): void {
  const known = useRef(newest)
  const call = useRef(onNewer)
  useEffect(() => {
    known.current = Math.max(known.current, newest)
    call.current = onNewer
  })
  useEffect(() => {
    let lastTouchMs = -Infinity
    const touched = () => {
      lastTouchMs = performance.now()
    }
    const mayRefresh = () =>
      !document.hidden && !isEditing() && !isSending() && performance.now() - lastTouchMs > quietMs
    const timer = setInterval(async () => {
      if (!mayRefresh()) return
      const answer = await fetch('/api/changes', { cache: 'no-store' }).catch(() => null)
      if (!answer?.ok) return
      const now = ((await answer.json()) as { newest: number }).newest
      if (now <= known.current || !mayRefresh()) return
      known.current = now
      call.current()
    }, everyMs)
    document.addEventListener('keydown', touched, true)
    document.addEventListener('pointerdown', touched, true)
    return () => {
      clearInterval(timer)
      document.removeEventListener('keydown', touched, true)
      document.removeEventListener('pointerdown', touched, true)
    }
  }, [])
}
