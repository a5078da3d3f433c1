import type { Metadata } from 'next'
import { Link } from '@/app/_components/ui/link'
import { orNotFound } from '@/lib/web/or-not-found'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { momentWords } from '@/lib/core/shop/when-words'
import { seeLinks, type LinkRow } from '@/lib/use-cases/links/see-links'
import { shopLocale, type ShopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { MakeLink } from './make-link'
import { RevokeLink } from './revoke-link'

type Props = { params: Promise<{ number: string }> }

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Customer link, job ${(await params).number}` }
}

export default async function LinksPage({ params }: Props) {
  const { number } = await params
  const actor = await requirePerson('customer-link.make')
  const [view, manner] = await Promise.all([orNotFound(seeLinks(actor, number, new Date())), shopLocale()])
  return (
    <>
      <h1>
        Customer link, job <Link href={`/jobs/${view.number}`}>{view.number}</Link>
      </h1>
      <p>
        Whoever holds the link sees where the heads of this job are, the promise date, and the spec sheets once they are
        released, and can answer what the customer was asked about findings
        {view.customer === '' ? '' : `. It is for ${view.customer}`}. It opens for 180 days; a new one does not end the
        others.
      </p>
      <MakeLink jobId={view.jobId} address={view.address} />
      <section className="stack part" aria-label="Links of this job">
        <h2>Links of this job</h2>
        {view.links.length === 0 ? (
          <EmptyState title="No link has been made for this job yet.">
            <p>Make one above and send it to the customer.</p>
          </EmptyState>
        ) : (
          <ul className="plain-list">
            {view.links.map((link) => (
              <LinkLine key={link.id} link={link} manner={manner} />
            ))}
          </ul>
        )}
      </section>
    </>
  )
}

function LinkLine({ link, manner }: { link: LinkRow; manner: ShopLocale }) {
  const words = (at: Date) => momentWords(at, manner)
  return (
    <li className="row spread">
      <span>
        Made {words(link.madeAt)} by {link.by}:{' '}
        {link.state === 'open' ? `opens until ${words(link.expiresAt)}` : link.state}
      </span>
      {link.state === 'open' && <RevokeLink linkId={link.id} madeAt={words(link.madeAt)} />}
    </li>
  )
}
