import { Link } from '@/app/_components/ui/link'
import { StationLink } from '../../../../_app/station-link'
import { Notice } from '@/app/_components/ui/notice'
import { sameKey } from '@/lib/core/route/keys'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { stepHref } from '../../../../step-href'
import styles from './step.module.css'

/** What is out of tolerance on this head, for whoever works on it next, with the ways on. Hold and finding are in the bar. */
export function OutOfTolerance({ screen }: { screen: StepScreen }) {
  const { outOfTolerance: lines, visitId, headId, step } = screen
  if (lines.length === 0) return null
  const steps = [...new Map(lines.map((line) => [line.step.label, line.step])).values()]
  return (
    <Notice kind="stop" title="Out of tolerance" live={false}>
      {lines.map(({ words, step: at }) => (
        <p key={`${at.label}${words}`} className={styles.outLine}>
          {at.label}: {words}.
        </p>
      ))}
      <p>Ways on:</p>
      <ul>
        {steps.map((at) => (
          <li key={at.label}>
            {sameKey(at, step) ? (
              againHere(step)
            ) : (
              <>
                Do it again: <StationLink href={stepHref(at.station, visitId, at)}>{at.label}</StationLink>
              </>
            )}
          </li>
        ))}
        <li>
          The owner waives it, on <Link href={`/heads/${headId}`}>the head’s page</Link>
        </li>
        <li>Put it on hold, or report a finding</li>
      </ul>
    </Notice>
  )
}

const againHere = ({ state }: StepScreen['step']): string =>
  state === 'done' ? 'Do it again: take the tick back here' : 'Read it again here'
