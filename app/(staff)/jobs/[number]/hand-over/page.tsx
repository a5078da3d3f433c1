import type { Metadata } from 'next'
import { Link } from '@/app/_components/ui/link'
import { orNotFound } from '@/lib/web/or-not-found'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Money } from '@/app/_components/ui/money'
import { Notice } from '@/app/_components/ui/notice'
import { When } from '@/app/_components/ui/when'
import { seeHandOver, type HandOverView, type HeadToGo } from '@/lib/use-cases/hand-over/see-hand-over'
import { balanceLabel, hasAmount } from '@/lib/words/money'
import { requirePerson } from '@/lib/web/require-actor'
import { moneyPaperHref, paper } from '../_components/papers'
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
        {view.partsPlace !== '' && `. Parts location: ${view.partsPlace}`}.
      </p>
      <Balance view={view} />
      {view.balance !== null && view.heads.some((head) => head.gone) && (
        <div className="row">
          <ButtonLink href={paper('hand-over-slip', view.number)} target="_blank">
            Hand-over slip (PDF)
          </ButtonLink>
          {view.receipt && (
            <ButtonLink href={moneyPaperHref(view.receipt.id)} target="_blank">
              Receipt {view.receipt.number} (PDF)
            </ButtonLink>
          )}
        </div>
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
          currency={view.currency}
          owed={view.owedText}
          mayGoUnpaid={view.mayGoUnpaid}
          heads={ready.map(({ visitId, tag, side, cameWith }) => ({ visitId, tag, side, cameWith }))}
        />
      )}
    </>
  )
}

function Balance({ view: { balance, openMinor, number, currency, locale } }: { view: HandOverView }) {
  if (balance === null) return null
  const amount = <Money minor={balance.minor} currency={currency} locale={locale} />
  if (!hasAmount(balance)) return <p>{balanceLabel(balance)}.</p>
  return (
    <Notice kind="caution" live={false} title={balance.code === 'to-pay' ? 'Not paid in full' : 'Paid too much'}>
      <p>
        {balanceLabel(balance)}: {amount}
      </p>
      {openMinor !== 0 && (
        <p>
          Not invoiced yet. <Link href={`/jobs/${number}`}>Write the invoice</Link>
        </p>
      )}
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
