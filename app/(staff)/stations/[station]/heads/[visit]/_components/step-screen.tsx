'use client'
import type { ReactNode } from 'react'
import type { PhotoPlace } from '@/app/_components/photo/use-photos'
import { useIdle } from '@/app/_components/ui/use-idle'
import type { StepKey } from '@/lib/core/route/step-ids'
import type { Shown } from '@/lib/use-cases/photos/see-photos'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import type { StepAnswer } from '@/lib/web/station-view'
import { PhotoSender } from '../../../../_app/photo-sender'
import { stepHref } from '../../../../step-href'
import { AddPhoto, CornerInsetForm, HeadDrawn, Notices, Others, PhotoStrip, SecondCheck } from './later'
import { PlanAtStep } from './plan-at-step'
import styles from './screen.module.css'
import { SideActions } from './side-actions'
import { StepBar } from './step-bar'
import { StepWork } from './step-work'
import type { WhatNext } from './what-next'

type Props = {
  answer: Extract<StepAnswer, { is: 'on-route' }>
  stepKey: StepKey
  next: WhatNext
  notSent: ReactNode
  /** How many deeds at this step were done here and not sent yet. */
  unsent: number
}

/** One step on one screen: what has to be known first, the work, and what is around it. */
export function StepScreenView({ answer: { screen, flow, photos }, stepKey, next, notSent, unsent }: Props) {
  const { step, visitId } = screen
  const done = step.state === 'done' || step.state === 'waived'
  const here = JSON.stringify(stepKey)
  const asksForPhoto = !done && screen.fields.some(({ kind }) => kind === 'photo')
  // At the bolts the holes are looked for first; at the mill the depth comes first, and the drawing under the cells.
  const atHoles = step.stepId === 'bolt-seats' || step.stepId === 'bolt-fit'
  // The rest of the page stands below the work, and comes after it.
  const idle = useIdle()
  const drawing = screen.drawing && <HeadDrawn drawing={screen.drawing} />
  return (
    <PhotoSender words={`${screen.tag}: ${step.label}, photo`}>
      <div className={styles.page} data-one-screen>
        <StepBar screen={screen} deeds={<SideActions visitId={visitId} head={screen.tag} step={stepKey} />} />
        <StepWork
          screen={screen}
          flow={flow}
          next={next}
          notices={
            <>
              {notSent}
              {unsent > 0 && <p role="status">Done here, not sent yet.</p>}
              {hasNotices(screen, done) && <Notices screen={screen} done={done} />}
            </>
          }
          above={
            <>
              <PlanAtStep plan={screen.plan} visitId={visitId} stepId={step.stepId} />
              {screen.secondCheck && <SecondCheck key={`${here}${screen.seen}`} screen={screen} step={stepKey} />}
              {atHoles && drawing}
              {screen.asksForInset && <CornerInsetForm />}
            </>
          }
          below={
            idle && (
              <>
                {!atHoles && drawing}
                <Photos
                  shown={photos}
                  to={asksForPhoto || !photos.mayAdd ? null : { visitId, ...stepKey, orderId: stepKey.orderId ?? '' }}
                />
                <Others screen={screen} hrefOf={(other) => stepHref(step.station, visitId, other)} />
              </>
            )
          }
        />
      </div>
    </PhotoSender>
  )
}

/** Whether there is anything to know before the work. */
const hasNotices = (screen: StepScreen, done: boolean): boolean =>
  [screen.holdReasons, screen.matesHeld, screen.outOfTolerance, screen.cautions].some(({ length }) => length > 0) ||
  screen.step.state === 'do again' ||
  (!done && screen.step.waitsFor.length > 0)

type PhotosProps = { shown: Shown; to: PhotoPlace | null }

function Photos({ shown, to }: PhotosProps) {
  if (shown.photos.length === 0 && to === null) return null
  return (
    <section className="stack part" aria-label="Photos">
      <h2>Photos</h2>
      {shown.photos.length > 0 && <PhotoStrip photos={shown.photos} manner={shown} label="Photos" />}
      {to && <AddPhoto to={to} />}
    </section>
  )
}
