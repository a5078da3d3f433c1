'use client'
import type { ReactNode } from 'react'
import { ConflictNotice } from '@/app/_components/ui/conflict-notice'
import type { Theirs } from '@/lib/core/errors'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { theirsAtText } from '@/lib/words/conflicts'

type Props = {
  screen: Pick<StepScreen, 'step' | 'timeZone' | 'locale'>
  theirs: Theirs
  /** What this person was about to do. */
  yours: ReactNode
  pending: boolean
  /** As the step is seen now, and as it was seen when this was asked for. */
  onKeepMine: (sight: { seen: number | undefined; since: number | undefined }) => void
  onUseTheirs: () => void
}

/** Someone else was at this step meanwhile: what they did, and what was about to be done here. */
export function StepConflict({ screen, theirs, onKeepMine, ...rest }: Props) {
  return (
    <ConflictNotice
      what={screen.step.label}
      theirs={<p>{theirsAtText(theirs, screen)}.</p>}
      onKeepMine={() => onKeepMine({ seen: theirs.seen, since: theirs.since })}
      {...rest}
    />
  )
}
