'use client'
import { useEffect, useRef, useState, type FormEvent } from 'react'
import { TakenOver } from '@/app/_components/form/taken-over'
import { Busy } from '@/app/_components/ui/busy'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { wordsForWait } from '@/lib/words/wait'
import { postSignIn, type Posted } from './post-sign-in'
import { problemWords, type Problem } from './sign-in-words'
import { useWait } from './use-wait'

const blank = { name: '', password: '', code: '' }

async function trySignIn(typed: typeof blank): Promise<Posted | { readonly kind: 'empty'; readonly waitS: number }> {
  if (typed.name.trim() === '' || typed.password === '') return { kind: 'empty', waitS: 0 }
  return postSignIn('credentials', typed)
}

/** Name and password; then, for whoever has a second factor, the code of their app. */
export function SignInForm({ goTo }: { goTo: string }) {
  const [typed, setTyped] = useState(blank)
  const [asksCode, setAsksCode] = useState(false)
  const [problem, setProblem] = useState<Problem | null>(null)
  const [pending, setPending] = useState(false)
  const { waitS, startWait } = useWait(0)
  const notice = useRef<HTMLDivElement>(null)
  const form = useRef<HTMLFormElement>(null)
  // A browser fills in what it remembers before the script is there, and a quick person types.
  useEffect(() => {
    const [name, password] = ['name', 'password'].map((field) => new FormData(form.current ?? undefined).get(field))
    setTyped((before) => ({ ...before, name: String(name ?? ''), password: String(password ?? '') }))
  }, [])
  const set = (field: keyof typeof blank, value: string) => setTyped((before) => ({ ...before, [field]: value }))

  async function send(event: FormEvent) {
    event.preventDefault()
    if (pending || waitS > 0) return
    setPending(true)
    setProblem(null)
    const found = await trySignIn(typed)
    // A whole new page: everything on it is asked for by the person who is now signed in.
    if (found.kind === 'in') return window.location.assign(goTo)
    setPending(false)
    if (found.kind === 'code') return setAsksCode(true)
    setProblem(found.kind)
    startWait(found.waitS * 1000)
    if (found.kind === 'wrong') set('password', '')
    if (found.kind === 'wrong-code') set('code', '')
    setTimeout(() => notice.current?.focus())
  }

  return (
    // Nothing is sent before the script is there: the page would come back without what was typed. Should a browser do it
    // all the same, the password must not stand in the address.
    <form ref={form} method="post" className="stack" noValidate onSubmit={(event) => void send(event)}>
      {problem && (
        <Notice kind="stop" title="Not signed in" ref={notice}>
          <p>{problemWords(problem)}</p>
          {waitS > 0 && <p>{wordsForWait(waitS)}</p>}
        </Notice>
      )}
      {asksCode ? (
        <CodeInput value={typed.code} onType={(code) => set('code', code)} />
      ) : (
        <NameAndPassword typed={typed} onType={set} />
      )}
      <TakenOver>
        <div className="row">
          <Button type="submit" variant="main" pending={pending} pendingLabel="Signing in…">
            Sign in
          </Button>
          {asksCode && (
            <Button
              variant="quiet"
              onClick={() => {
                setTyped(blank)
                setAsksCode(false)
                setProblem(null)
              }}
            >
              Start again
            </Button>
          )}
        </div>
      </TakenOver>
      <Busy when={pending} label="Signing in…" />
    </form>
  )
}

type NameAndPasswordProps = { typed: typeof blank; onType: (field: 'name' | 'password', value: string) => void }

function NameAndPassword({ typed, onType }: NameAndPasswordProps) {
  return (
    <>
      <TextInput
        label="Name"
        name="name"
        autoComplete="username"
        autoCapitalize="none"
        spellCheck={false}
        autoFocus
        maxLength={100}
        value={typed.name}
        onChange={(event) => onType('name', event.target.value)}
      />
      <TextInput
        label="Password"
        name="password"
        type="password"
        autoComplete="current-password"
        maxLength={200}
        value={typed.password}
        onChange={(event) => onType('password', event.target.value)}
      />
    </>
  )
}

function CodeInput({ value, onType }: { value: string; onType: (code: string) => void }) {
  return (
    <TextInput
      label="Code"
      hint="The six digits that your authenticator app shows now, or one of your recovery codes."
      name="code"
      autoComplete="one-time-code"
      autoCapitalize="none"
      spellCheck={false}
      autoFocus
      maxLength={50}
      value={value}
      onChange={(event) => onType(event.target.value)}
    />
  )
}
