import { Link } from '@/app/_components/ui/link'
import { StationLink } from '../../../../_app/station-link'
import { Tag } from '@/app/_components/tag/tag'
import { Notice } from '@/app/_components/ui/notice'
import type { Station, StepKey } from '@/lib/core/route/step-ids'
import type { LeftStep as LeftStepView } from '@/lib/use-cases/stations/see-left-step'
import { stepHref } from '../../../../step-href'
import { LeftDraft } from './later'

type Props = { view: LeftStepView; visitId: string; stepKey: StepKey; station: Station }

/** The address of a step that is not on the head's route: says so, shows what was typed, and leads on. */
export function LeftStep({ view: { headId, tag, label, open }, visitId, stepKey, station }: Props) {
  return (
    <>
      <div className="row spread">
        <Tag number={tag} size="l" href={`/heads/${headId}`} />
        <StationLink href={`/stations/${station}`} variant="quiet">
          Back to the queue
        </StationLink>
      </div>
      <h1>{label}</h1>
      <Notice kind="caution" title="Not on the route" live={false}>
        <p>{label} is not on the route of this head. The plan or the ordered work may have changed.</p>
      </Notice>
      <LeftDraft visitId={visitId} step={stepKey} />
      <section className="stack" aria-label="Open here">
        <h2>Open on this head at this station</h2>
        {open.length === 0 ? (
          <p className="soft">Nothing.</p>
        ) : (
          <ul className="plain-list">
            {open.map((step) => (
              <li key={stepHref(station, visitId, step)}>
                <StationLink href={stepHref(station, visitId, step)}>{step.label}</StationLink>{' '}
                <span className="soft">{step.state}</span>
              </li>
            ))}
          </ul>
        )}
        <p>
          <Link href={`/heads/${headId}`}>The whole record of this head</Link>
        </p>
      </section>
    </>
  )
}
