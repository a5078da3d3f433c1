'use client'
import { useEffect, useState } from 'react'
import { Button } from '@/app/_components/ui/button'

type Progress = { readonly done: number; readonly of: number }
/** `waiting`: asked for, and not begun yet. */
type State = 'idle' | 'waiting' | 'done' | Progress

const everyMs = 700
/** Of the first moments, in which the server has not begun yet. */
const firstLooks = 8

/** Fetches everything as one archive, which the browser saves, and says how far it is. */
export function TakeAlong() {
  const [state, setState] = useState<State>('idle')
  const isUnderWay = state !== 'idle' && state !== 'done'
  useEffect(() => {
    if (!isUnderWay) return
    let looks = 0
    let begun = false
    const timer = setInterval(async () => {
      const progress = await progressNow()
      looks += 1
      begun ||= progress !== null
      if (progress) setState(progress)
      else if (begun || looks > firstLooks) setState('done')
    }, everyMs)
    return () => clearInterval(timer)
  }, [isUnderWay])
  return (
    <div className="stack">
      <div>
        <Button
          pending={isUnderWay}
          onClick={() => {
            setState('waiting')
            window.location.assign('/api/export')
          }}
        >
          Take everything along
        </Button>
      </div>
      <div role="status">{words(state)}</div>
      {isUnderWay && state !== 'waiting' && (
        <progress aria-label="Taken along" max={Math.max(1, state.of)} value={state.done} />
      )}
    </div>
  )
}

function words(state: State): string {
  if (state === 'idle') return ''
  if (state === 'waiting') return 'It begins in a moment …'
  if (state === 'done') return 'The server has sent it. Look among your downloads.'
  return state.of === 0 ? 'It begins …' : `${state.done} of ${state.of} tables and files`
}

async function progressNow(): Promise<Progress | null> {
  try {
    const answer = await fetch('/api/export/progress', { cache: 'no-store' })
    return answer.ok ? ((await answer.json()) as { progress: Progress | null }).progress : null
  } catch {
    return null // the network is away: asked again
  }
}
