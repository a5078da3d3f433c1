import Link from 'next/link'
import { notFound } from 'next/navigation'
import { cache, Fragment } from 'react'
import { z } from 'zod'
import { stepIdSchema } from '@/lib/schemas/step'
import { PhotoPart } from '@/app/_components/photo/photo-part'
import { MatesHeld } from '@/app/_components/head/mates-held'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Notice } from '@/app/_components/ui/notice'
import { RefusedError } from '@/lib/core/errors'
import { stations, type StepKey } from '@/lib/core/route/step-ids'
import { seeFlowStep } from '@/lib/use-cases/flow/see-flow-step'
import { seeVisitPhotos } from '@/lib/use-cases/photos/see-photos'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeLeftStep } from '@/lib/use-cases/stations/see-left-step'
import { seeStep, type StepScreen } from '@/lib/use-cases/stations/see-step'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { stepHref } from '../../../step-href'
import { FlowAgain } from './_components/flow-again'
import { CornerInsetForm } from './_components/corner-inset-form'
import { HeadDrawn } from './_components/head-drawn'
import { LeftStep } from './_components/left-step'
import { Others } from './_components/others'
import { OutOfTolerance } from './_components/out-of-tolerance'
import { PlanAtStep } from './_components/plan-at-step'
import { SecondCheck } from './_components/second-check'
import { SideActions } from './_components/side-actions'
import { StepWork } from './_components/step-work'
import { sameKey } from '@/lib/core/route/keys'
import { reasonText, waitText } from '@/lib/words/route'

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
  // At the bolts the holes are looked for first; at the mill the depth comes first, and the drawing under the form.
  const atHoles = step.stepId === 'bolt-seats' || step.stepId === 'bolt-fit'
  const flow = step.stepId === 'flow' ? await seeFlowStep(actor, visit, key) : null
  const work = <StepWork key={`${screen.visitId}${here}`} screen={screen} />
  return (
    <>
      <AutoRefresh newest={newest} />
      <div className="row spread">
        <div className="row">
          <Tag number={screen.tag} size="l" href={`/heads/${screen.headId}`} />
          <span>
            job {screen.jobNumber}, {screen.casting}
          </span>
        </div>
        <ButtonLink href={`/stations/${step.station}`} variant="quiet">
          Back to the {screen.stationName.toLowerCase()} queue
        </ButtonLink>
      </div>
      <h1>{step.label}</h1>
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
      {step.state === 'do again' && (
        <Notice kind="caution" title="Do again" live={false}>
          <p>{reasonText(step.reason)}</p>
        </Notice>
      )}
      {!done && step.waitsFor.length > 0 && (
        <Notice kind="caution" title="Not yet" live={false}>
          <WaitsFor screen={screen} />
        </Notice>
      )}
      <OutOfTolerance screen={screen}>
        <SideActions visitId={visit} step={key} />
      </OutOfTolerance>
      {screen.cautions.length > 0 && (
        <Notice kind="caution" title="Look again" live={false}>
          {screen.cautions.map((caution) => (
            <p key={caution}>{caution}.</p>
          ))}
        </Notice>
      )}
      <PlanAtStep plan={screen.plan} visitId={visit} stepId={step.stepId} />
      <SecondCheck key={`${here}${screen.seen}`} screen={screen} step={key} />
      {atHoles && <HeadDrawn drawing={screen.drawing} />}
      {screen.asksForInset && <CornerInsetForm />}
      {flow ? (
        <FlowAgain screen={screen} flow={flow}>
          {work}
        </FlowAgain>
      ) : (
        work
      )}
      {!atHoles && <HeadDrawn drawing={screen.drawing} />}
      <PhotoPart
        photos={photos.photos.filter(
          ({ stepId, occurrence, orderId }) => JSON.stringify({ stepId, occurrence, orderId }) === here,
        )}
        shown={photos}
        to={asksForPhoto ? null : { visitId: visit, ...key, orderId: key.orderId ?? '' }}
      />
      {screen.outOfTolerance.length === 0 && <SideActions visitId={visit} step={key} />}
      <Others screen={screen} hrefOf={(other) => stepHref(step.station, visit, other)} />
    </>
  )
}

/** Null when the route does not have the step. */
const onRoute = (view: Promise<StepScreen>): Promise<StepScreen | null> =>
  view.catch((error: unknown) => {
    if (error instanceof RefusedError && error.refusal.code === 'not-on-route') return null
    throw error
  })

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
            {first ? <Link href={stepHref(first.station, screen.visitId, first)}>{text}</Link> : text}
          </Fragment>
        )
      })}
      .
    </p>
  )
}
