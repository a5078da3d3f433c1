import { cache } from 'react'
import { seePerson } from '@/lib/use-cases/people/see-people'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { ActionButton } from '../../_components/action-button'
import { changedBy } from '../../_components/changed-by'
import { PageHead } from '../../_components/page-head'
import { RetirePart } from '../../_components/retire-part'
import { PasswordForm } from '../_components/password-form'
import { PersonForm } from '../_components/person-form'
import { clearPinAction, retirePersonAction } from '../actions'

type Props = { params: Promise<{ id: string }> }

const see = cache(async (id: string) => orNotFound(seePerson(await requirePerson('person.change'), id)))

export async function generateMetadata({ params }: Props) {
  return { title: (await see((await params).id)).person.name }
}

export default async function PersonPage({ params }: Props) {
  const { person, last } = await see((await params).id)
  const { id: personId, version, retired } = person
  return (
    <>
      <PageHead up={['/back-room/people', 'People']} title={person.name}>
        <p className="soft">
          Sign-in name: {person.signIn}
          {retired && '. Retired: cannot sign in.'}
        </p>
      </PageHead>
      <section className="part" aria-labelledby="rights">
        <h2 id="rights">Name and rights</h2>
        <PersonForm person={person} by={changedBy(last, await shopLocale())} />
      </section>
      <section className="part" aria-labelledby="password">
        <h2 id="password">Password</h2>
        <PasswordForm personId={personId} version={version} />
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
        retired={retired}
        action={retirePersonAction}
        entry={{ personId, version }}
        retire="Signs them out everywhere. Their name stays on the work they did."
        restore="Lets them sign in again with their old password. Set a new one if they have forgotten it."
      />
    </>
  )
}
