'use client'
import dynamic from 'next/dynamic'
import { untilHere } from '@/app/_components/ui/until-here'
import { Loading } from '@/app/_components/ui/loading'
import type { Queue } from '@/lib/use-cases/stations/see-queue'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { useEffect } from 'react'
import { StepScreenView } from '../[station]/heads/[visit]/_components/step-screen'
import type { WhatNext } from '../[station]/heads/[visit]/_components/what-next'
import { stepHref } from '../step-href'
import { useHere, useKept, useOutbox } from './here'
import { stepPlace } from './keeper'
import { NotSent } from './not-sent'
import { usePageTitle } from './page-title'
import type { Place } from './place'
import type { ShopWords } from './shop-words'
import { StationLink } from './station-link'
import { deedsAt, queueWithKept, withKept } from './with-kept'

const LeftStep = dynamic(
  () => untilHere(() => import('../[station]/heads/[visit]/_components/left-step').then((file) => file.LeftStep)),
  {
    loading: () => <Loading />,
  },
)

type Props = { at: Extract<Place, { is: 'step' }>; words: ShopWords }

/** One step of one head: what is kept of it at once, then as the server has it. */
export function StepView({ at, words }: Props) {
  const { station, visitId, key } = at
  const { keeper, person } = useHere()
  const { steps, queue, refused, away, at: asOf } = useKept()
  const { unsent } = useOutbox()
  const place = stepPlace(visitId, key)
  const answer = steps.get(place)
  const screen = answer?.is === 'on-route' ? answer.screen : null
  usePageTitle(screen ? `${screen.tag}: ${screen.step.label}` : answer ? 'Not on the route' : words.names[station])
  useEffect(() => void keeper.openStep(at.station, at.visitId, at.key), [keeper, at])

  const notSent = <NotSent asOf={asOf} locale={words.locale} timeZone={words.timeZone} />
  if (!answer) {
    const why = refused.get(place)?.message ?? (away ? notKeptWords : null)
    return (
      <>
        {notSent}
        {why === null ? (
          <Loading />
        ) : (
          <>
            <h1>{words.names[station]}</h1>
            <p>{why}</p>
            <p>
              <StationLink href={`/stations/${station}`} variant="plain">
                Queue
              </StationLink>
            </p>
          </>
        )}
      </>
    )
  }
  if (answer.is === 'left') return <LeftStep view={answer.left} visitId={visitId} stepKey={key} station={station} />
  const shown = withKept(answer.screen, unsent, (id) => (id === person.id ? person.name : 'Somebody at this device'))
  return (
    <StepScreenView
      answer={{ ...answer, screen: shown }}
      stepKey={key}
      next={whatNext(shown, queue && queueWithKept(queue, unsent))}
      notSent={notSent}
      unsent={deedsAt(unsent, visitId, key).length}
    />
  )
}

const notKeptWords = 'This step is not kept on this tablet. It is shown once the server answers.'

/** After a step: the next head of this station, and what is next on this one wherever that is done. */
function whatNext({ visitId, step, route }: StepScreen, queue: Pick<Queue, 'ready' | 'started'> | null): WhatNext {
  const line = queue && [...queue.ready, ...queue.started].find((one) => one.visitId !== visitId)
  const own = route.find(({ state }) => state === 'ready' || state === 'do again' || state === 'started')
  return {
    queueHref: `/stations/${step.station}`,
    head: line
      ? { words: `Next head: ${line.tag}, ${line.step.label}`, href: stepHref(step.station, line.visitId, line.step) }
      : null,
    step: own ? { words: `This head: ${own.label}`, href: stepHref(own.station, visitId, own) } : null,
  }
}
