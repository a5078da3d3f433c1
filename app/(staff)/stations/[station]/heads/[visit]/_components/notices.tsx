import { Link } from '@/app/_components/ui/link'
import { StationLink } from '../../../../_app/station-link'
import { Fragment } from 'react'
import { MatesHeld } from '@/app/_components/head/mates-held'
import { Notice } from '@/app/_components/ui/notice'
import { sameKey } from '@/lib/core/route/keys'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { noticeLine } from '@/lib/words/head-marks'
import { reasonText, waitText } from '@/lib/words/route'
import { stepHref } from '../../../../step-href'
import { ReceiveHere } from './receive-here'
import { OutOfTolerance } from './out-of-tolerance'

/** What whoever takes this step has to know first: held, to be done again, not yet, out of tolerance. */
export function Notices({ screen, done }: { screen: StepScreen; done: boolean }) {
  return (
    <>
      {screen.holdReasons.length > 0 && (
        <Notice kind="stop" title="Held" live={false}>
          {screen.holdReasons.map((reason) => (
            <p key={reason}>{reason}</p>
          ))}
          <p>
            Nothing more is done to this head until the owner has decided, on{' '}
            <Link href={`/heads/${screen.headId}`}>its own page</Link>.
          </p>
        </Notice>
      )}
      <MatesHeld mates={screen.matesHeld} />
      <KnowFirst marks={screen.marks} />
      {screen.step.state === 'do again' && (
        <Notice kind="caution" title="Do again" live={false}>
          <p>{reasonText(screen.step.reason)}</p>
        </Notice>
      )}
      {screen.receive && <ReceiveHere receive={screen.receive} visitId={screen.visitId} tag={screen.tag} />}
      {!done && screen.receive === null && screen.step.waitsFor.length > 0 && (
        <Notice kind="caution" title="Not yet" live={false}>
          <WaitsFor screen={screen} />
        </Notice>
      )}
      <OutOfTolerance screen={screen} />
      {screen.cautions.length > 0 && (
        <Notice kind="caution" title="Look again" live={false}>
          {screen.cautions.map((caution) => (
            <p key={caution}>{caution}.</p>
          ))}
        </Notice>
      )}
    </>
  )
}

/** Why this head is here again, what is to be put right on it, what the customer has not answered. */
function KnowFirst({ marks }: Pick<StepScreen, 'marks'>) {
  const lines = marks.flatMap((mark) => noticeLine(mark) ?? [])
  if (lines.length === 0) return null
  return (
    <Notice kind="caution" title="About this head" live={false}>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </Notice>
  )
}

/** What comes first, each with its own page where it is a step of this head. */
function WaitsFor({ screen }: { screen: StepScreen }) {
  return (
    <p>
      Waiting for:{' '}
      {screen.step.waitsFor.map((wait, place) => {
        const first = wait.code === 'step' ? screen.route.find((step) => sameKey(step, wait.step)) : undefined
        const text = waitText(wait)
        return (
          <Fragment key={text}>
            {place > 0 && ', '}
            {first ? <StationLink href={stepHref(first.station, screen.visitId, first)}>{text}</StationLink> : text}
          </Fragment>
        )
      })}
      .
    </p>
  )
}
