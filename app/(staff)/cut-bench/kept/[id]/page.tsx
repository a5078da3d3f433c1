import { z } from 'zod'
import { notFound } from 'next/navigation'
import { Link } from '@/app/_components/ui/link'
import { cache, Fragment } from 'react'
import { Marks } from '@/app/_components/charts/marks-svg'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { CutCautions } from '@/app/_components/cut/cut-cautions'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Money } from '@/app/_components/ui/money'
import { When } from '@/app/_components/ui/when'
import { cutSection } from '@/lib/drawing/cut-section'
import { benchQuery } from '@/lib/schemas/bench-question'
import { seeEstimate } from '@/lib/use-cases/cut-bench/see-estimate'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'

type Props = { params: Promise<{ id: string }> }

const see = cache(async (id: string) => {
  if (!z.uuid().safeParse(id).success) notFound()
  return orNotFound(seeEstimate(await requirePerson('cut-bench.see'), id))
})

export async function generateMetadata({ params }: Props) {
  const { number, forWhom } = await see((await params).id)
  return { title: `Estimate ${number} for ${forWhom}` }
}

export default async function KeptPage({ params }: Props) {
  const kept = await see((await params).id)
  const manner = await shopLocale()
  const { answer } = kept
  return (
    <>
      <h1>
        Estimate {kept.number} for {kept.forWhom}
      </h1>
      <p className="soft">
        Saved by {kept.by}, <When at={kept.at} zone={manner.timeZone} locale={manner.locale} style="date-time" />. What
        was answered then; the shop may have learned since.
      </p>
      <p className="figure-large">{answer.title}</p>
      <p>
        {[kept.castingName, answer.start, answer.effort].filter(Boolean).join('. ')}.
        {answer.priceMinor !== null && (
          <>
            {' '}
            <Money minor={answer.priceMinor} currency={manner.currency} locale={manner.locale} /> a head
            {answer.unpriced.length > 0 && `, without ${answer.unpriced.join(', ')}`}.
          </>
        )}
      </p>
      {kept.note !== '' && <p>{kept.note}</p>}
      {kept.jobs.length > 0 && (
        <p>
          Booked from it:{' '}
          {kept.jobs.map((number, at) => (
            <Fragment key={number}>
              {at > 0 && ', '}
              <Link href={`/jobs/${number}`}>job {number}</Link>
            </Fragment>
          ))}
        </p>
      )}
      <div className="row">
        <ButtonLink variant="main" href={`/api/papers/estimate/${kept.id}`}>
          Print it
        </ButtonLink>
        {kept.mayBook && <ButtonLink href={`/counter/book?estimate=${kept.id}`}>Book a job from it</ButtonLink>}
        <ButtonLink href={`/cut-bench?${benchQuery(kept.question)}`}>Ask again</ButtonLink>
      </div>
      <div className="columns">
        <div className="stack">
          <Marks drawing={cutSection({ ...answer.drawing, chamberShape: kept.chamberShape })} />
          <DefinitionList items={answer.lines} />
          <CutCautions cautions={answer.cautions} />
        </div>
        <div className="stack">
          {answer.groups.map(({ title, lines }) => (
            <section key={title} aria-label={title} className="stack">
              <h2>{title}</h2>
              <DefinitionList items={lines} />
            </section>
          ))}
        </div>
      </div>
      <KeptList
        title="Not calculated"
        items={answer.unknown.map(({ label, needs }) => `${label}: needs ${needs.join(', ')}`)}
      />
      <KeptList
        title="Steps needed"
        items={answer.steps.map(({ label, outside }) => (outside ? `${label} (at a vendor)` : label))}
      />
      <KeptList
        title="Other options"
        items={answer.others.map(({ title, start, why }) => `${title} (${start}): ${why}`)}
      />
    </>
  )
}

function KeptList({ title, items }: { title: string; items: readonly string[] }) {
  if (items.length === 0) return null
  return (
    <section aria-label={title} className="part">
      <h2>{title}</h2>
      <ul className="plain-list">
        {items.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
    </section>
  )
}
