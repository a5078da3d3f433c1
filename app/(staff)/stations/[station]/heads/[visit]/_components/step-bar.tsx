import type { ReactNode } from 'react'
import { SwitchHere } from '@/app/_components/shell/at-tablet'
import { Tag } from '@/app/_components/tag/tag'
import { StationLink } from '../../../../_app/station-link'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { markName } from '@/lib/words/mark-names'
import styles from './screen.module.css'

/** What this is: the head and the step; at the right what may be wanted at any step. */
export function StepBar({ screen, deeds }: { screen: StepScreen; deeds: ReactNode }) {
  const { step } = screen
  const odd = [...new Set(screen.marks.map(({ code }) => markName[code]))]
  return (
    <header className={styles.bar}>
      <Tag number={screen.tag} size="m" href={`/heads/${screen.headId}`} />
      <div className={styles.what}>
        <h1>{step.label}</h1>
        <p>
          {odd.length > 0 && <strong className={styles.odd}>{odd.join(', ')}</strong>} {screen.casting}, job{' '}
          {screen.jobNumber}, {screen.whereabouts}
        </p>
      </div>
      <div className={styles.deeds}>
        {deeds}
        <StationLink
          variant="plain"
          href={`/stations/${step.station}`}
          aria-label={`Queue of the ${screen.stationName.toLowerCase()}`}
        >
          Queue
        </StationLink>
      </div>
      <div className={styles.person}>
        <SwitchHere />
      </div>
    </header>
  )
}
