import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { PublicShell } from '@/app/_components/shell/public-shell'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Notice } from '@/app/_components/ui/notice'
import { needsSetUp } from '@/lib/use-cases/shop/set-up-shop'
import { seeRack } from '@/lib/use-cases/tablets/see-rack'
import { localPath } from '@/lib/web/local-path'
import { currentActor } from '@/lib/web/require-actor'
import { tabletToken } from '@/lib/web/tablet-cookie'
import { RackSignIn } from './_components/rack-sign-in'
import { SignInForm } from './_components/sign-in-form'

export const metadata: Metadata = { title: 'Sign in' }

type Asked = 'next' | 'by' | 'card' | 'said'
type Props = { searchParams: Promise<Partial<Record<Asked, string | string[]>>> }

/** On an enrolled tablet the rack of time cards; elsewhere, or when asked for, name and password. */
export default async function SignInPage({ searchParams }: Props) {
  const { next, by, card, said } = await searchParams // first: nothing below is asked at build time
  if (await needsSetUp()) redirect('/setup')
  const goTo = localPath(typeof next === 'string' ? next : undefined)
  if (await currentActor()) redirect(goTo)
  const rack = await seeRack(await tabletToken(), new Date())
  if (rack && by !== 'password' && said === undefined) {
    return <RackSignIn rack={rack} next={goTo} taken={typeof card === 'string' ? card : null} />
  }
  return (
    <PublicShell narrow>
      <h1>Sign in to Brasstag</h1>
      {said === 'password' && (
        <Notice title="Saved" live={false}>
          <p>Your new password is saved, and you are signed out everywhere. Sign in with it.</p>
        </Notice>
      )}
      <SignInForm goTo={goTo} />
      {rack && (
        <div className="row">
          <ButtonLink href={`/sign-in?next=${encodeURIComponent(goTo)}`} variant="quiet">
            Sign in with a PIN instead
          </ButtonLink>
        </div>
      )}
    </PublicShell>
  )
}
