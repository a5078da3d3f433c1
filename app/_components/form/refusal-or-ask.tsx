'use client'
import { lazy, Suspense, type ComponentProps } from 'react'
import { untilHere } from '../ui/until-here'
import { RefusalNotice } from './refusal-notice'

type Props = ComponentProps<typeof RefusalNotice> & {
  /** Sends the deed once more. */
  onAgain: () => void
}

/** Few deeds ask for it. */
const AskAgain = lazy(() => untilHere(() => import('./ask-again')))

/** What was refused; where the password is asked for once more, the field for it. The stations have no such deed. */
export function RefusalOrAsk({ onAgain, ...rest }: Props) {
  return (
    <RefusalNotice {...rest}>
      {rest.refusal.code === 'ask-again' && (
        <Suspense fallback={null}>
          <AskAgain onConfirmed={onAgain} />
        </Suspense>
      )}
    </RefusalNotice>
  )
}
