import { notFound } from 'next/navigation'
import { cache } from 'react'
import { z } from 'zod'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { PhotoPart } from '@/app/_components/photo/photo-part'
import type { Actor } from '@/lib/core/access/roles'
import { RefusedError } from '@/lib/core/errors'
import { stations, type Station, type StepKey } from '@/lib/core/route/step-ids'
import { stepIdSchema } from '@/lib/schemas/step'
import { seeFlowStep } from '@/lib/use-cases/flow/see-flow-step'
import { seeVisitPhotos } from '@/lib/use-cases/photos/see-photos'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeLeftStep } from '@/lib/use-cases/stations/see-left-step'
import { seeQueue } from '@/lib/use-cases/stations/see-queue'
import { seeStep, type StepScreen } from '@/lib/use-cases/stations/see-step'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { stepHref } from '../../../step-href'
import { CornerInsetForm } from './_components/later'
import { HeadDrawn } from './_components/head-drawn'
import { LeftStep } from './_components/left-step'
import { Notices } from './_components/notices'
import { Others } from './_components/others'
import { PlanAtStep } from './_components/plan-at-step'
import styles from './_components/screen.module.css'
import { SecondCheck } from './_components/second-check'
import { SideActions } from './_components/side-actions'
import { StepBar } from './_components/step-bar'
import type { WhatNext } from './_components/step-done'
import { StepWork } from './_components/step-work'

type Props = {
  params: Promise<{ station: string; visit: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

const asked = z.object({
  visit: z.uuid(),
  step: stepIdSchema,
  run: z.string().max(40).default(''),
  order: z.uuid().nullable().default(null),
})

/** `address`: visit and query as text, so that title and page read once. */
const see = cache(async (address: string) => {
  const parsed = asked.safeParse(JSON.parse(address))
  if (!parsed.success) notFound()
  const { visit, step: stepId, run: occurrence, order: orderId } = parsed.data
  const key: StepKey = { stepId, occurrence, orderId }
  const actor = await requirePerson('job.see')
  const newest = await newestChange()
  return { actor, key, visit, newest, screen: await orNotFound(onRoute(seeStep(actor, visit, key, new Date()))) }
})
const seeAsked = async ({ params, searchParams }: Props) =>
  see(JSON.stringify({ ...(await searchParams), visit: (await params).visit }))

export async function generateMetadata(props: Props) {
  const { screen } = await seeAsked(props)
  return { title: screen ? `${screen.tag}: ${screen.step.label}` : 'Not on the route' }
}

export default async function StepPage(props: Props) {
  const { actor, key, visit, newest, screen } = await seeAsked(props)
  if (screen === null) {
    const { station } = await props.params
    const at = stations.find((one) => one === station) ?? notFound()
    const view = await seeLeftStep(actor, visit, key, at)
    return <LeftStep view={view} visitId={visit} stepKey={key} station={at} />
  }
  const photos = await seeVisitPhotos(actor, visit, new Date())
  const { step } = screen
  const done = step.state === 'done' || step.state === 'waived'
  const here = JSON.stringify(key)
  const asksForPhoto = !done && screen.fields.some(({ kind }) => kind === 'photo')
  // At the bolts the holes are looked for first; at the mill the depth comes first, and the drawing under the cells.
  const atHoles = step.stepId === 'bolt-seats' || step.stepId === 'bolt-fit'
  const flow = step.stepId === 'flow' ? await seeFlowStep(actor, visit, key) : null
  return (
    <div className={styles.page} data-one-screen>
      <AutoRefresh newest={newest} />
      <StepBar screen={screen} deeds={<SideActions visitId={visit} step={key} />} />
      <StepWork
        key={`${screen.visitId}${here}`}
        screen={screen}
        flow={flow}
        next={done ? await whatNext(actor, screen) : nowhere(step.station)}
        notices={<Notices screen={screen} done={done} />}
        above={
          <>
            <PlanAtStep plan={screen.plan} visitId={visit} stepId={step.stepId} />
            {screen.secondCheck && <SecondCheck key={`${here}${screen.seen}`} screen={screen} step={key} />}
            {atHoles && <HeadDrawn drawing={screen.drawing} />}
            {screen.asksForInset && <CornerInsetForm />}
          </>
        }
        below={
          <>
            {!atHoles && <HeadDrawn drawing={screen.drawing} />}
            <PhotoPart
              photos={photos.photos.filter(
                ({ stepId, occurrence, orderId }) => JSON.stringify({ stepId, occurrence, orderId }) === here,
              )}
              shown={photos}
              to={asksForPhoto ? null : { visitId: visit, ...key, orderId: key.orderId ?? '' }}
            />
            <Others screen={screen} hrefOf={(other) => stepHref(step.station, visit, other)} />
          </>
        }
      />
    </div>
  )
}

const nowhere = (station: Station): WhatNext => ({ head: null, step: null, queueHref: `/stations/${station}` })

/** After a step: the next head of this station, and what is next on this head wherever that is done. */
async function whatNext(actor: Actor, { visitId, step, route }: StepScreen): Promise<WhatNext> {
  const { ready, started } = await seeQueue(actor, step.station)
  const line = [...ready, ...started].find((one) => one.visitId !== visitId)
  const own = route.find(({ state }) => state === 'ready' || state === 'do again' || state === 'started')
  return {
    ...nowhere(step.station),
    head: line
      ? { words: `Next head: ${line.tag}, ${line.step.label}`, href: stepHref(step.station, line.visitId, line.step) }
      : null,
    step: own ? { words: `This head: ${own.label}`, href: stepHref(own.station, visitId, own) } : null,
  }
}

/** Null when the route does not have the step. */
const onRoute = (view: Promise<StepScreen>): Promise<StepScreen | null> =>
  view.catch((error: unknown) => {
    if (error instanceof RefusedError && error.refusal.code === 'not-on-route') return null
    throw error
  })
