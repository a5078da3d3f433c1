import { SessionList } from '@/app/_components/people/session-list'
import { Notice } from '@/app/_components/ui/notice'
import { can } from '@/lib/core/access/can'
import { seeAccount } from '@/lib/use-cases/people/see-account'
import { seeSessions } from '@/lib/use-cases/people/see-sessions'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson, sessionIdOfRequest } from '@/lib/web/require-actor'
import { Factor } from './_components/factor'
import { PasswordForm } from './_components/password-form'
import { PinForm } from './_components/pin-form'

export const metadata = { title: 'My account' }

export default async function AccountPage() {
  const actor = await requirePerson('job.see')
  const account = await seeAccount(actor)
  const sessions = await seeSessions(actor, actor.personId, await sessionIdOfRequest(), new Date())
  const { timeZone, locale } = await shopLocale()
  return (
    <>
      <div className="stack">
        <h1>My account</h1>
        <p className="soft">
          {account.name}. Sign-in name: {account.signIn}
        </p>
      </div>
      <section className="part" aria-labelledby="password">
        <h2 id="password">Password</h2>
        <PasswordForm signIn={account.signIn} />
      </section>
      <section className="part" aria-labelledby="factor">
        <h2 id="factor">Second factor</h2>
        {can(actor, 'person.change') && !account.hasFactor && (
          <Notice kind="caution" title="For owners" live={false}>
            <p>You may do everything here. Set up a second factor, so that your password alone is not enough.</p>
          </Notice>
        )}
        <Factor hasFactor={account.hasFactor} codesLeft={account.codesLeft} />
      </section>
      <section className="part" aria-labelledby="sessions">
        <h2 id="sessions">Signed in now</h2>
        <SessionList sessions={sessions} zone={timeZone} locale={locale} />
      </section>
      <section className="part" aria-labelledby="pin">
        <h2 id="pin">PIN for the tablets</h2>
        {account.mayHavePin ? (
          <>
            <p>
              {account.hasPin ? 'You have a PIN. A new one takes its place.' : 'You have no PIN yet.'} On a tablet it
              gives you a machinist’s rights, whatever else you may do.
            </p>
            <PinForm />
          </>
        ) : (
          <p>A PIN is for work at the stations. Ask the owner for the role of machinist.</p>
        )}
      </section>
    </>
  )
}
