import type { Here } from './here'

const lookEveryMs = 5000

/** Somebody is at something: a figure or a form is begun. */
const isBusy = (): boolean =>
  document.querySelector('[data-hands-on], dialog[open], [aria-busy="true"], form :focus') !== null

/**
 * Loads the page anew once the server runs another build than `own`: when nothing is typed here and nothing waits to be
 * sent. Gives back how to stop.
 */
export function watchBuild({ keeper, outbox }: Pick<Here, 'keeper' | 'outbox'>, own: string): () => void {
  const timer = setInterval(() => {
    const { build } = keeper.snapshot()
    const isOld = build !== '' && build !== own
    if (isOld && outbox.snapshot().deeds.length === 0 && !isBusy()) window.location.reload()
  }, lookEveryMs)
  return () => clearInterval(timer)
}
