import { Link } from '@/app/_components/ui/link'
import { notFound } from 'next/navigation'
import { z } from 'zod'
import { CutCautions } from '@/app/_components/cut/cut-cautions'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Notice } from '@/app/_components/ui/notice'
import { When } from '@/app/_components/ui/when'
import { chamberLines, planTitle } from '@/lib/core/options/plan-words'
import { seePlan } from '@/lib/use-cases/plans/see-plan'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { AcceptForm } from './accept-form'
import { PlanForm } from './plan-form'

type Props = { params: Promise<{ number: string; pair: string }> }

export async function generateMetadata({ params }: Props) {
  return { title: `Cut plan, job ${(await params).number}` }
}

export default async function PlanPage({ params }: Props) {
  const { number, pair } = await params
  const pairId = z.uuid().safeParse(pair)
  if (!pairId.success) notFound()
  const actor = await requirePerson('job.see')
  const [view, manner] = await Promise.all([orNotFound(seePlan(actor, pairId.data)), shopLocale()])
  const { context, versions } = view
  if (context.jobNumber !== number) notFound()
  const newest = versions[0]
  return (
    <>
      <h1>Cut plan</h1>
      <p>
        {context.heads.map((head) => head.tag).join(' and ')}, {context.castingName}, job{' '}
        <Link href={`/jobs/${number}`}>{number}</Link>
      </p>
      {newest && (
        <section className="stack" aria-label="The plan now">
          <p>Kept, version {newest.number}</p>
          <p className="figure-large">{planTitle(newest.record)}</p>
          <DefinitionList items={chamberLines(newest.record)} />
          <CutCautions cautions={newest.record.cautions} />
          {newest.accepted === '' ? (
            view.mayAccept && newest.record.kind !== 'none' && <AcceptForm planId={newest.id} number={newest.number} />
          ) : (
            <p>Accepted by {newest.accepted}.</p>
          )}
        </section>
      )}
      {view.closed ? (
        <Notice live={false}>
          <p>A head of this plan is released: the plan is frozen.</p>
        </Notice>
      ) : (
        <PlanForm
          key={newest?.number ?? 0}
          context={context}
          whereNeeded={view.whereNeeded}
          seenVersion={newest?.number ?? 0}
          before={newest?.record ?? null}
        />
      )}
      {versions.length > 1 && (
        <section className="stack part" aria-label="Earlier versions">
          <h2>Every version</h2>
          <ol reversed className="plain-list">
            {versions.map((version) => (
              <li key={version.id}>
                {version.number}: {planTitle(version.record)}
                <span className="soft">
                  {' '}
                  {version.by}, <When at={version.at} zone={manner.timeZone} locale={manner.locale} />
                  {version.reason !== '' && `: ${version.reason}`}
                </span>
              </li>
            ))}
          </ol>
        </section>
      )}
    </>
  )
}
