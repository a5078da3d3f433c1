import { redirect } from 'next/navigation'
import { connection } from 'next/server'
import { PublicShell } from '@/app/_components/shell/public-shell'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { needsSetUp } from '@/lib/use-cases/shop/set-up-shop'
import { seeRack } from '@/lib/use-cases/tablets/see-rack'
import { tabletToken } from '@/lib/web/tablet-cookie'
import { EnrolForm } from './_components/enrol-form'

export const metadata = { title: 'Enrol this tablet' }

export default async function TabletPage() {
  await connection() // asked of the database at every request, never at build time
  if (await needsSetUp()) redirect('/setup')
  const rack = await seeRack(await tabletToken(), new Date())
  return (
    <PublicShell narrow>
      <div className="stack">
        <h1>Enrol this tablet</h1>
        {rack ? (
          <>
            <p>
              This device is already enrolled as {rack.tabletName}, {rack.stationName}. A new code enrols it again.
            </p>
            <div className="row">
              <ButtonLink href="/sign-in">Sign in</ButtonLink>
            </div>
          </>
        ) : (
          <p>People then sign in here with their name and a PIN. Ask the owner for a code.</p>
        )}
      </div>
      <EnrolForm />
    </PublicShell>
  )
}
