import { Link } from '@/app/_components/ui/link'
import { StationLink } from '../../../../_app/station-link'
import { HeadScale } from '@/app/_components/scale/head-scale'
import { sameKey } from '@/lib/core/route/keys'
import type { StepKey } from '@/lib/core/route/step-ids'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { RackPlace } from './rack-place'

type Props = { screen: StepScreen; hrefOf: (step: StepKey) => string }

/** Where this head stands, and what else there is to do to it here. */
export function Others({ screen, hrefOf }: Props) {
  const { route, step } = screen
  const others = route.filter((one) => one.station === step.station && !sameKey(one, step))
  return (
    <section className="stack part" aria-label="This head">
      <HeadScale graduations={route} />
      {others.length > 0 && (
        <>
          <h2>Also at this station</h2>
          <ul className="plain-list">
            {others.map((other) => (
              <li key={hrefOf(other)}>
                <StationLink href={hrefOf(other)}>{other.label}</StationLink>{' '}
                <span className="soft">{other.state}</span>
              </li>
            ))}
          </ul>
        </>
      )}
      <RackPlace screen={screen} />
      <p>
        <Link href={`/heads/${screen.headId}`}>The whole record of this head</Link>
      </p>
    </section>
  )
}
