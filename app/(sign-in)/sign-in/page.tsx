import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { needsSetUp } from '@/lib/use-cases/shop/set-up-shop'
import { localPath } from '@/lib/web/local-path'
import { currentActor } from '@/lib/web/require-actor'
import { SignInForm } from './_components/sign-in-form'

export const metadata: Metadata = { title: 'Sign in' }

type Props = { searchParams: Promise<{ next?: string | string[] }> }

export default async function SignInPage({ searchParams }: Props) {
  const { next } = await searchParams // first: nothing below is asked at build time
  if (await needsSetUp()) redirect('/setup')
  const goTo = localPath(typeof next === 'string' ? next : undefined)
  if (await currentActor()) redirect(goTo)
  return (
    <>
      <h1>Sign in to Brasstag</h1>
      <SignInForm goTo={goTo} />
    </>
  )
}
