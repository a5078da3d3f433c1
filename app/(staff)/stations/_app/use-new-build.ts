import { useEffect } from 'react'
import { useKept, useOutbox } from './here'

const lookEveryMs = 5000

/** Somebody is at something: a figure or a form is begun. */
const isBusy = (): boolean =>
  document.querySelector('[data-hands-on], dialog[open], [aria-busy="true"], form :focus') !== null

/** Loads the page anew once the server runs another build: when nothing is typed here and nothing waits to be sent. */
export function useNewBuild(own: string): void {
  const { build } = useKept()
  const waiting = useOutbox().deeds.length
  const isOld = build !== '' && build !== own && waiting === 0
  useEffect(() => {
    if (!isOld) return
    const timer = setInterval(() => !isBusy() && window.location.reload(), lookEveryMs)
    return () => clearInterval(timer)
  }, [isOld])
}
