import { whenIdle } from '@/app/_components/ui/use-idle'
import { registerWorker } from '@/app/_service-worker/register'
import type { Here } from './here'
import { watchBuild } from './watch-build'

type Part = () => Promise<unknown>

/** The other screen: likely to be tapped next. */
const next: readonly Part[] = [() => import('./queue-view'), () => import('./step-view')]

/** Every other part of the station app that comes later: without the network it has to be here already. */
const later: readonly Part[] = [
  () => import('./other-trouble'),
  () => import('../[station]/heads/[visit]/_components/notices'),
  () => import('../[station]/heads/[visit]/_components/others'),
  () => import('../[station]/heads/[visit]/_components/cell-asks'),
  () => import('../[station]/heads/[visit]/_components/side-forms'),
  () => import('../[station]/heads/[visit]/_components/answers-done'),
  () => import('../[station]/heads/[visit]/_components/repeat-choices'),
  () => import('../[station]/heads/[visit]/_components/in-words'),
  () => import('../[station]/heads/[visit]/_components/rack-form'),
  () => import('../[station]/heads/[visit]/_components/step-conflict'),
  () => import('../[station]/heads/[visit]/_components/yours'),
  () => import('../[station]/heads/[visit]/_components/repeats'),
  () => import('../[station]/heads/[visit]/_components/left-step'),
  () => import('../[station]/heads/[visit]/_components/left-draft'),
  () => import('../[station]/heads/[visit]/_components/step-draft-schema'),
  () => import('../[station]/heads/[visit]/_components/cut-table'),
  () => import('../[station]/heads/[visit]/_components/next-pass'),
  () => import('../[station]/heads/[visit]/_components/head-drawn'),
  () => import('../[station]/heads/[visit]/_components/flow-conditions'),
  () => import('../[station]/heads/[visit]/_components/flow-fields'),
  () => import('../[station]/heads/[visit]/_components/flow-import'),
  () => import('../[station]/heads/[visit]/_components/photo-field'),
  () => import('../[station]/heads/[visit]/_components/valve-sheet/valve-sheet'),
  () => import('../[station]/heads/[visit]/_components/second-check'),
  () => import('../[station]/heads/[visit]/_components/check-form'),
  () => import('../[station]/heads/[visit]/_components/receive-form'),
  () => import('@/app/(staff)/away/_components/reject-form'),
  () => import('../[station]/heads/[visit]/_components/corner-inset-form'),
  () => import('@/app/_components/outbox/post-photo'),
  () => import('@/app/_components/readings/correct-form'),
  () => import('@/app/_components/photo/add-photo'),
  () => import('@/app/_components/photo/photo-strip'),
  () => import('@/app/_components/form/draft-schemas'),
]

/** So long the screen is left alone before what it may need some day is fetched: whoever opened it taps first. */
const restMs = 3000

/** So long until what could not be fetched is tried again. */
const againMs = 10_000

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))
const idle = () => new Promise<void>(whenIdle)

/** Fetches one after the other while the browser has nothing else to do; again and again until all are here. */
async function fetchParts(parts: readonly Part[], isStopped: () => boolean): Promise<void> {
  for (let left = parts; left.length > 0 && !isStopped();) {
    const failed: Part[] = []
    for (const part of left) {
      await idle()
      if (!isStopped()) await part().catch(() => failed.push(part))
    }
    left = failed
    if (left.length > 0) await pause(againMs)
  }
}

async function fetchAll(isStopped: () => boolean): Promise<void> {
  await fetchParts(next, isStopped)
  await pause(restMs)
  if (isStopped()) return
  // It fetches files of the build too, beside the parts. Without a worker everything works while the page is open.
  void registerWorker().catch(() => {})
  await fetchParts(later, isStopped)
}

/** What the station app does while nobody waits for it. Gives back how to stop. */
export function loadAhead(here: Here, build: string): () => void {
  let isStopped = false
  void fetchAll(() => isStopped)
  const stopWatching = watchBuild(here, build)
  return () => {
    isStopped = true
    stopWatching()
  }
}
