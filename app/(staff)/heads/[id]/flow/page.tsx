import { notFound } from 'next/navigation'
import { cache } from 'react'
import { z } from 'zod'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { flowChoiceSchema } from '@/lib/schemas/flow'
import { seeFlow } from '@/lib/use-cases/flow/see-flow'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { ChooseRuns } from './_components/choose-runs'
import { PortRuns } from './_components/port-runs'
import { Ratios } from './_components/ratios'

type Props = {
  params: Promise<{ id: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

/** `choice`: the query that chooses runs, as text, so that title and page read once. */
const see = cache(async (id: string, choice: string) => {
  if (!z.uuid().safeParse(id).success) notFound()
  const actor = await requirePerson('job.see')
  const newest = await newestChange()
  const chosen = flowChoiceSchema.parse(JSON.parse(choice))
  return { newest, view: await orNotFound(seeFlow(actor, id, chosen)) }
})
const seeAsked = async ({ params, searchParams }: Props) => see((await params).id, JSON.stringify(await searchParams))

export async function generateMetadata(props: Props) {
  return { title: `${(await seeAsked(props)).view.tag}: Flow` }
}

export default async function FlowPage(props: Props) {
  const { newest, view } = await seeAsked(props)
  const manner = await shopLocale()
  return (
    <>
      <AutoRefresh newest={newest} />
      <div className="row spread">
        <div className="row">
          <Tag number={view.tag} size="l" href={`/heads/${view.headId}`} />
          <h1>Flow</h1>
        </div>
        <ButtonLink href={`/heads/${view.headId}`} variant="quiet">
          Back to the head
        </ButtonLink>
      </div>
      {view.runs.length === 0 ? (
        <EmptyState title="No flow run of this head yet.">
          <p>A run is entered at the flow bench, at the step “Flow run before” or “after”.</p>
        </EmptyState>
      ) : (
        <>
          <ChooseRuns view={view} manner={manner} />
          {view.comparison.map((port) => (
            <PortRuns key={port.port} port={port} />
          ))}
          {view.ratio && <Ratios ratio={view.ratio} />}
          <p className="soft">{view.repeatability}</p>
        </>
      )}
    </>
  )
}
