import { notFound } from 'next/navigation'
import { connection } from 'next/server'
import { PublicShell } from '@/app/_components/shell/public-shell'
import { needsSetUp } from '@/lib/use-cases/shop/set-up-shop'
import { SetUpForm } from './_components/set-up-form'
import { currencyOptions, localeOptions, paperOptions, zoneOptions } from './shop-options'

export const metadata = { title: 'Set up this shop' }

export default async function SetUpPage() {
  await connection() // asked of the database at every request, never at build time
  if (!(await needsSetUp())) notFound()
  const options = {
    zones: zoneOptions(),
    locales: localeOptions(),
    currencies: currencyOptions(),
    papers: paperOptions,
  }
  return (
    <PublicShell narrow>
      <div className="stack">
        <h1>Set up this shop</h1>
        <p>Enter the code to create the owner.</p>
      </div>
      <SetUpForm options={options} />
    </PublicShell>
  )
}
