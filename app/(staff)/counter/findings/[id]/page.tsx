import type { Metadata } from 'next'
import { Link } from '@/app/_components/ui/link'
import { cache } from 'react'
import { orNotFound } from '@/lib/web/or-not-found'
import { AskByMessage } from '@/app/_components/messages/ask-by-message'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { Tag } from '@/app/_components/tag/tag'
import { Notice } from '@/app/_components/ui/notice'
import { Phone } from '@/app/_components/ui/phone'
import { When } from '@/app/_components/ui/when'
import { PhotoStrip } from '@/app/_components/photo/photo-strip'
import { seeFinding } from '@/lib/use-cases/findings/see-finding'
import { seeFindingPhotos } from '@/lib/use-cases/photos/see-photos'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { requirePerson } from '@/lib/web/require-actor'
import { AnswerForm, ChangeAnswer } from './_components/answer-form'
import { OnLink } from './_components/on-link'

type Props = { params: Promise<{ id: string }> }

const see = cache(async (id: string) => {
  const actor = await requirePerson('finding.ask')
  const newest = await newestChange()
  return { actor, newest, finding: await orNotFound(seeFinding(actor, { id, now: new Date() })) }
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { finding } = await see((await params).id)
  return { title: `${finding.tag}: ${finding.what}` }
}

export default async function FindingPage({ params }: Props) {
  const { id } = await params
  const { actor, newest, finding } = await see(id)
  const shown = await seeFindingPhotos(actor, id, new Date())
  return (
    <>
      <AutoRefresh newest={newest} />
      <h1>{finding.what}</h1>
      <div className="row">
        <Tag number={finding.tag} href={`/heads/${finding.headId}`} />
        <span>
          {finding.customer}, job <Link href={`/jobs/${finding.jobNumber}`}>{finding.jobNumber}</Link>
        </span>
        <Phone number={finding.phone} />
        <span className="soft">
          found <When at={finding.reportedAt} zone={finding.timeZone} locale={finding.locale} />
        </span>
      </div>
      <PhotoStrip photos={shown.photos} manner={shown} label="Photos of the finding" />
      {finding.answer === null ? (
        <>
          <AnswerForm finding={finding} />
          <OnLink finding={finding} />
          <AskByMessage actor={actor} number={finding.jobNumber} findingId={id} />
        </>
      ) : (
        <Notice title={finding.answer === 'yes' ? 'The customer said yes' : 'The customer said no'} live={false}>
          <p>
            {finding.answeredBy} answered{finding.onLink && ' on the link'}
            {finding.answeredAt && (
              <>
                , <When at={finding.answeredAt} zone={finding.timeZone} locale={finding.locale} />
              </>
            )}
            . {finding.answer === 'yes' ? 'The work is on the head’s route.' : 'It is on record as declined.'}
          </p>
          {finding.earlier.map(({ answer, by, at, reason }) => (
            <p key={at?.toISOString()}>
              Before: {answer}, {by}
              {at && (
                <>
                  , <When at={at} zone={finding.timeZone} locale={finding.locale} />
                </>
              )}
              . Changed: {reason}
            </p>
          ))}
          <ChangeAnswer finding={finding} />
        </Notice>
      )}
    </>
  )
}
