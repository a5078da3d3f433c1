'use client'
import { useEffect, useRef, useState, type ReactNode } from 'react'
import { Button } from '../ui/button'
import { LastTouch } from './last-touch'
import { leaveTablet } from './leave-tablet'
import styles from './tablet-watch.module.css'

const lookEveryMs = 1000
/** So often the server is told that somebody is at the tablet. */
const tellEveryMs = 20_000
const tryAgainMs = 5000
const touches = ['pointerdown', 'keydown', 'wheel'] as const

type Stage = 'here' | 'leaving' | 'no connection'

/**
 * Takes a tablet back to the rack of time cards when nobody has touched it for so long. From then on nothing on the page
 * can be used; what is typed waits in its person's drafts.
 */
export function TabletWatch({ idleMs, name }: { idleMs: number; name: string }) {
  const [stage, setStage] = useState<Stage>('here')
  const gone = stage !== 'here'
  useEffect(() => (gone ? undefined : watch(idleMs, () => setStage('leaving'))), [idleMs, gone])
  useEffect(() => {
    if (!gone) return
    const attempt = async () => {
      if (!(await leaveTablet('idle'))) setStage('no connection')
    }
    void attempt()
    const timer = setInterval(() => void attempt(), tryAgainMs)
    return () => clearInterval(timer)
  }, [gone])
  if (!gone) return null
  return (
    <Cover>
      {stage === 'leaving' ? (
        <p role="status">Nobody touched this tablet for a while. Back to the rack.</p>
      ) : (
        <>
          <p role="status">
            No connection to the shop’s server. What you did and typed is kept here. The rack comes back with the
            connection, and asks for your PIN.
          </p>
          <Button onClick={() => setStage('here')}>I am {name}: go on</Button>
        </>
      )}
    </Cover>
  )
}

/** Calls `leave` once when the tablet was left alone, or its session is over. Gives back how to stop. */
function watch(idleMs: number, leave: () => void): () => void {
  const last = new LastTouch()
  let toldMs = 0
  let [untold, left] = [false, false]

  function leaveOnce() {
    if (!left) leave()
    left = true
  }
  async function tell() {
    toldMs = Date.now()
    untold = false
    const answer = await fetch('/api/tablet/touch', { method: 'POST' }).catch(() => null)
    // The session is over, or the tablet was revoked.
    if (answer?.status === 401) leaveOnce()
    if (answer === null) untold = true
  }
  function tellNowAndThen() {
    if (untold && Math.abs(Date.now() - toldMs) >= tellEveryMs) void tell()
  }
  function touched(event: Event) {
    if (left || last.agoMs() >= idleMs) {
      // The hand that wakes a tablet is not that of the person who left it.
      event.preventDefault()
      event.stopImmediatePropagation()
      return leaveOnce()
    }
    last.note()
    untold = true
    tellNowAndThen()
  }
  function look() {
    if (left) return
    if (last.agoMs() >= idleMs) return leaveOnce()
    tellNowAndThen()
  }

  const timer = setInterval(look, lookEveryMs)
  document.addEventListener('visibilitychange', look)
  for (const name of touches) document.addEventListener(name, touched, { capture: true, passive: false })
  return () => {
    clearInterval(timer)
    document.removeEventListener('visibilitychange', look)
    for (const name of touches) document.removeEventListener(name, touched, { capture: true })
  }
}

/** A modal dialog: nothing below it can be reached by touch, by keys or by a screen reader. */
function Cover({ children }: { children: ReactNode }) {
  const ref = useRef<HTMLDialogElement>(null)
  useEffect(() => ref.current?.showModal(), [])
  return (
    <dialog ref={ref} className={styles.cover} aria-label="Signed out" onCancel={(event) => event.preventDefault()}>
      {children}
    </dialog>
  )
}
