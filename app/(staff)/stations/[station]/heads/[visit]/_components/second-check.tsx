'use client'
import dynamic from 'next/dynamic'
import { untilHere } from '@/app/_components/ui/until-here'
import { nothingYet } from '@/app/_components/ui/nothing-yet'
import { Notice } from '@/app/_components/ui/notice'
import { When } from '@/app/_components/ui/when'
import type { StepKey } from '@/lib/core/route/step-ids'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'

/** Steps that need no second check do not load it. */
const CheckForm = dynamic(() => untilHere(() => import('./check-form').then((file) => file.CheckForm)), {
  loading: nothingYet,
})

type Props = { screen: StepScreen; step: StepKey }

/** Before a deep cut: another person reads one chamber and confirms plan and head; after it, who did. */
export function SecondCheck({ screen, step }: Props) {
  const { secondCheck: check } = screen
  if (check === null) return null
  if (check.state === 'done') {
    return (
      <p>
        Second check: {check.by} {check.read === '' ? '' : `read ${check.read}, `}confirmed plan and head,{' '}
        <When at={check.at} zone={screen.timeZone} locale={screen.locale} />.
      </p>
    )
  }
  return (
    <Notice kind="caution" title="Second check" live={false}>
      {screen.plan.pass === null && <p>{check.words}</p>}
      {check.takenBy !== '' && check.cannot === '' && <p>{check.takenBy} took this head.</p>}
      {check.cannot === '' ? <CheckForm screen={screen} step={step} check={check} /> : <p>{check.cannot}</p>}
    </Notice>
  )
}
