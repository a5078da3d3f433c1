import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { HeadScale } from '@/app/_components/scale/head-scale'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Day } from '@/app/_components/ui/day'
import { RefusedError } from '@/lib/core/errors'
import { seeByLink, type LinkHead, type LinkView } from '@/lib/use-cases/links/see-by-link'
import { noteRefusal } from '@/lib/web/note-refusal'
import { Account } from './_components/account'
import { Questions } from './_components/questions'
import { ShopHead } from './_components/shop-head'
import { SpecPage } from './_components/spec-page'

type Props = { params: Promise<{ token: string }> }

/** How often it may be asked for is looked at before the page begins: `proxy.ts`. */
const see = cache(seen)

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const view = await see((await params).token)
  return {
    title: { absolute: `Job ${view.jobNumber} · ${view.shop.name}` },
    robots: { index: false, follow: false },
    referrer: 'no-referrer',
  }
}

export default async function LinkPage({ params }: Props) {
  const { token } = await params
  const view = await see(token)
  return (
    <>
      <header>
        <ShopHead shop={view.shop} token={token} />
        <h1>Your heads, job {view.jobNumber}</h1>
        <p>{promise(view)}</p>
      </header>
      <Questions view={view} token={token} />
      {view.heads.map((head) => (
        <Head key={head.visitId} head={head} token={token} />
      ))}
      {view.account && <Account account={view.account} currency={view.currency} locale={view.locale} />}
    </>
  )
}

/** A link that opens nothing is a page that is not there, whatever is the matter with it. */
async function seen(token: string): Promise<LinkView> {
  try {
    return await seeByLink(token, new Date())
  } catch (error) {
    if (error instanceof RefusedError && error.refusal.code === 'not-found') {
      noteRefusal('not-found', async () => null)
      notFound()
    }
    throw error
  }
}

function promise({ promiseOn, expected, locale, heads }: LinkView) {
  if (heads.length > 0 && heads.every((head) => head.spec !== null)) return 'The work is done.'
  return (
    <>
      {promiseOn === null ? (
        'No promise date yet.'
      ) : (
        <>
          Promised for <Day on={promiseOn} locale={locale} style="date" />.
        </>
      )}{' '}
      {expected && (
        <>
          Expected about <Day on={expected.on} locale={locale} style="date" />. {expected.why}
        </>
      )}
    </>
  )
}

function Head({ head, token }: { head: LinkHead; token: string }) {
  return (
    <section className="stack part" aria-label={`Head ${head.tag}`}>
      <div className="row">
        <Tag number={head.tag} />
        <h2>{head.casting === '' ? 'Head' : head.casting}</h2>
      </div>
      <p>{head.where}</p>
      {head.spec ? (
        <>
          <div className="row">
            <ButtonLink href={`/s/${token}/spec/${head.visitId}`} variant="main">
              Spec sheet of {head.tag} (PDF)
            </ButtonLink>
          </div>
          <SpecPage spec={head.spec} />
        </>
      ) : (
        <HeadScale graduations={head.marks} />
      )}
    </section>
  )
}
