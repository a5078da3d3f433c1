import { seePerson } from '@/lib/use-cases/people/see-people'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { changedBy } from '../../_components/changed-by'
import { ActionButton } from '../../_components/action-button'
import { orNotFound } from '@/lib/web/or-not-found'
import { PasswordForm } from '../_components/password-form'
import { PersonForm } from '../_components/person-form'
import { retirePersonAction } from '../actions'

export const metadata = { title: 'Person' }

export default async function PersonPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params
  const actor = await requirePerson('person.change')
  const { person, last } = await orNotFound(seePerson(actor, id))
  const manner = await shopLocale()
  const { version, retired } = person
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/people">People</BackLink>
        <h1>{person.name}</h1>
        <p className="soft">
          Signs in as {person.signIn}
          {retired && '; retired: cannot sign in'}
        </p>
      </div>
      <section className="part" aria-labelledby="rights">
        <h2 id="rights">Name and rights</h2>
        <PersonForm person={person} by={changedBy(last, manner)} />
      </section>
      <section className="part" aria-labelledby="password">
        <h2 id="password">Password</h2>
        <PasswordForm personId={id} version={version} />
      </section>
      <section className="part" aria-labelledby="retire">
        <h2 id="retire">{retired ? 'Retired' : 'Retire'}</h2>
        <p>
          {retired
            ? 'Their name stands on what they did. Taken back, they sign in with the password they had, or a new one.'
            : 'Ends their sign-in at once, everywhere. Their name stays on what they did.'}
        </p>
        <ActionButton
          action={retirePersonAction}
          input={{ personId: id, version, retired: !retired }}
          variant={retired ? 'plain' : 'stop'}
        >
          {retired ? 'Take back' : 'Retire this person'}
        </ActionButton>
      </section>
    </>
  )
}
