'use client'
import dynamic from 'next/dynamic'
import type { ReactNode } from 'react'
import { PhotoPart } from '@/app/_components/photo/photo-part'
import type { StepKey } from '@/lib/core/route/step-ids'
import type { StepAnswer } from '@/lib/web/station-view'
import { stepHref } from '../../../../step-href'
import { CornerInsetForm } from './later'
import { Notices } from './notices'
import { Others } from './others'
import { PlanAtStep } from './plan-at-step'
import styles from './screen.module.css'
import { SecondCheck } from './second-check'
import { SideActions } from './side-actions'
import { StepBar } from './step-bar'
import type { WhatNext } from './step-done'
import { StepWork } from './step-work'

/** Steps at which no edge and no bolt hole is worked on do not load the drawing. */
const HeadDrawn = dynamic(() => import('./head-drawn').then((file) => file.HeadDrawn))

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
  const drawing = screen.drawing && <HeadDrawn drawing={screen.drawing} />
  return (
    <div className={styles.page} data-one-screen>
      <StepBar screen={screen} deeds={<SideActions visitId={visitId} step={stepKey} />} />
      <StepWork
        screen={screen}
        flow={flow}
        next={next}
        notices={
          <>
            {notSent}
            {unsent > 0 && <p role="status">Done here, not sent yet.</p>}
            <Notices screen={screen} done={done} />
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
          <>
            {!atHoles && drawing}
            <PhotoPart
              photos={photos.photos}
              shown={photos}
              to={asksForPhoto ? null : { visitId, ...stepKey, orderId: stepKey.orderId ?? '' }}
            />
            <Others screen={screen} hrefOf={(other) => stepHref(step.station, visitId, other)} />
          </>
        }
      />
    </div>
  )
}
