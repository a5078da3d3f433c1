import { SessionList } from '@/app/_components/people/session-list'
import { seeWaits } from '@/lib/use-cases/people/lift-waits'
import { seePerson } from '@/lib/use-cases/people/see-people'
import { seeSessions } from '@/lib/use-cases/people/see-sessions'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { sessionIdOfRequest } from '@/lib/web/require-actor'
import { ActionButton } from '../../_components/action-button'
import { changedBy } from '../../_components/changed-by'
import { entryPage } from '../../_components/entry-page'
import { PageHead } from '../../_components/page-head'
import { RetirePart } from '../../_components/retire-part'
import { PersonForm } from '../_components/person-form'
import { ResetLink } from '../_components/reset-link'
import { Waits } from '../_components/waits'
import { clearFactorAction, clearPinAction, retirePersonAction } from '../actions'

const page = entryPage('person.change', seePerson, ({ person }) => person.name)

export const generateMetadata = page.generateMetadata

export default async function PersonPage(props: Parameters<typeof page.see>[0]) {
  const { actor, person, last } = await page.see(props)
  const shop = await shopLocale()
  const { timeZone, locale } = shop
  const now = new Date()
  const { id: personId } = person
  const waits = await seeWaits(actor, personId, now)
  const sessions = await seeSessions(actor, personId, await sessionIdOfRequest(), now)
  return (
    <>
      <PageHead up={['/back-room/people', 'People']} title={person.name}>
        <p className="soft">
          Sign-in name: {person.signIn}
          {person.retired && '. Retired: cannot sign in.'}
        </p>
      </PageHead>
      <section className="part" aria-labelledby="rights">
        <h2 id="rights">Name and rights</h2>
        <PersonForm person={person} by={changedBy(last, shop)} />
      </section>
      <section className="part" aria-labelledby="password">
        <h2 id="password">Password</h2>
        {!person.hasPassword && <p>Has none yet: make a link and hand it on.</p>}
        <ResetLink personId={personId} />
      </section>
      <Waits personId={personId} waits={waits} />
      <section className="part" aria-labelledby="factor">
        <h2 id="factor">Second factor</h2>
        {person.hasFactor ? (
          <>
            <p>Signs in with a code of their app too. Take it away when phone and recovery codes are lost.</p>
            <ActionButton action={clearFactorAction} input={{ personId }}>
              Take away the second factor
            </ActionButton>
          </>
        ) : (
          <p>Has none. People set it up themselves, under My account.</p>
        )}
      </section>
      <section className="part" aria-labelledby="sessions">
        <h2 id="sessions">Signed in now</h2>
        <SessionList sessions={sessions} zone={timeZone} locale={locale} />
      </section>
      <section className="part" aria-labelledby="pin">
        <h2 id="pin">PIN for the tablets</h2>
        {person.hasPin ? (
          <>
            <p>Has a PIN. Clearing it signs them out on every tablet; they set another one with their password.</p>
            <ActionButton action={clearPinAction} input={{ personId }}>
              Clear the PIN
            </ActionButton>
          </>
        ) : (
          <p>Has none. People set it themselves, under My account, with their password.</p>
        )}
      </section>
      <RetirePart
        what="person"
        entry={person}
        idAs="personId"
        action={retirePersonAction}
        retire="Signs them out everywhere. Their name stays on the work they did."
        restore="Lets them sign in again with their old password. Set a new one if they have forgotten it."
      />
    </>
  )
}
