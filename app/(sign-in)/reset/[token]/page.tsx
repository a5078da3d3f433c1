import type { Metadata } from 'next'
import { PublicShell } from '@/app/_components/shell/public-shell'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { RefusedError } from '@/lib/core/errors'
import { seeResetLink } from '@/lib/use-cases/people/reset-password'
import { noteRefusal } from '@/lib/web/note-refusal'
import { ResetForm } from './_components/reset-form'

export const metadata: Metadata = {
  title: 'Choose a password',
  robots: { index: false, follow: false },
  referrer: 'no-referrer',
}

type Props = { params: Promise<{ token: string }> }

/** What a link opens that the owner handed on: the person chooses a password. */
export default async function ResetPage({ params }: Props) {
  const { token } = await params
  const person = await personOf(token)
  return (
    <PublicShell narrow>
      <h1>Choose a password</h1>
      {person ? (
        <>
          <p>
            For {person.name}. Sign-in name: {person.signIn}
          </p>
          <ResetForm token={token} signIn={person.signIn} />
        </>
      ) : (
        <>
          <p>This link does not work any more. Ask the owner for a new one.</p>
          <div className="row">
            <ButtonLink href="/sign-in">Sign in</ButtonLink>
          </div>
        </>
      )}
    </PublicShell>
  )
}

async function personOf(token: string) {
  try {
    return await seeResetLink(token, new Date())
  } catch (error) {
    if (error instanceof RefusedError && error.refusal.code === 'not-found') {
      noteRefusal('not-found', async () => null)
      return null
    }
    throw error
  }
}
