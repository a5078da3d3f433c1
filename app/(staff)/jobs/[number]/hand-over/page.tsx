import type { Metadata } from 'next'
import Link from 'next/link'
import { orNotFound } from '@/lib/web/or-not-found'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Money } from '@/app/_components/ui/money'
import { Notice } from '@/app/_components/ui/notice'
import { When } from '@/app/_components/ui/when'
import { seeHandOver, type HandOverView, type HeadToGo } from '@/lib/use-cases/hand-over/see-hand-over'
import { requirePerson } from '@/lib/web/require-actor'
import { paper } from '../_components/papers'
import { HandOverForm } from './hand-over-form'

type Props = { params: Promise<{ number: string }> }

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Hand over job ${(await params).number}` }
}

export default async function HandOverPage({ params }: Props) {
  const { number } = await params
  const actor = await requirePerson('visit.hand-over')
  const view = await orNotFound(seeHandOver(actor, number))
  const ready = view.heads.filter((head) => head.whyNot === '')
  return (
    <>
      <h1>
        Hand over, job <Link href={`/jobs/${view.number}`}>{view.number}</Link>
      </h1>
      <p>
        {view.customer}
        {view.partsPlace !== '' && `. Parts are kept at ${view.partsPlace}`}.
      </p>
      <Balance view={view} />
      {view.dueMinor !== null && view.heads.some((head) => head.gone) && (
        <ButtonLink href={paper('receipt', view.number)} prefetch={false} target="_blank">
          Receipt (PDF)
        </ButtonLink>
      )}
      <ul className="plain-list">
        {view.heads.map((head) => (
          <HeadLine key={head.visitId} head={head} view={view} />
        ))}
      </ul>
      {ready.length > 0 && (
        <HandOverForm
          key={ready.map((head) => head.visitId).join()}
          jobId={view.jobId}
          heads={ready.map(({ visitId, tag, side, cameWith }) => ({ visitId, tag, side, cameWith }))}
        />
      )}
    </>
  )
}

function Balance({ view: { dueMinor, currency, locale } }: { view: HandOverView }) {
  if (dueMinor === null) return null
  if (dueMinor <= 0) return <p>Nothing is left to pay.</p>
  return (
    <Notice kind="caution" live={false} title="Not paid in full">
      <p>
        Still to pay: <Money minor={dueMinor} currency={currency} locale={locale} />
      </p>
    </Notice>
  )
}

function HeadLine({ head, view }: { head: HeadToGo; view: HandOverView }) {
  return (
    <li className="row spread">
      <Tag number={head.tag} href={`/heads/${head.headId}`} />
      <span>
        {head.casting}
        {head.rackPlace !== '' && `, at ${head.rackPlace}`}
      </span>
      <span>
        {head.gone ? (
          <>
            Handed over to {head.gone.to},{' '}
            <When at={head.gone.at} zone={view.timeZone} locale={view.locale} style="date" />
          </>
        ) : head.whyNot === '' ? (
          head.whereabouts
        ) : (
          <>
            {head.whyNot} <Link href={`/heads/${head.headId}`}>See what is missing on {head.tag}</Link>
          </>
        )}
        {head.cautions.map((caution) => (
          <span key={caution}>, as corrected: {caution}</span>
        ))}
      </span>
      {head.hasSheet && (
        <ButtonLink href={`/api/papers/spec-sheet/${head.visitId}`} variant="quiet">
          Spec sheet of {head.tag} (PDF)
        </ButtonLink>
      )}
    </li>
  )
}
