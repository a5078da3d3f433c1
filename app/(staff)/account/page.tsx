import { seeAccount } from '@/lib/use-cases/people/see-account'
import { requirePerson } from '@/lib/web/require-actor'
import { PinForm } from './_components/pin-form'

export const metadata = { title: 'My account' }

export default async function AccountPage() {
  const account = await seeAccount(await requirePerson('job.see'))
  return (
    <>
      <div className="stack">
        <h1>My account</h1>
        <p className="soft">
          {account.name}. Sign-in name: {account.signIn}
        </p>
      </div>
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
