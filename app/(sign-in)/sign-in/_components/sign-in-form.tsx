'use client'
import { getCsrfToken, signIn } from 'next-auth/react'
import { useRef, useState } from 'react'
import { Busy } from '@/app/_components/ui/busy'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'

const words = {
  wrong: 'Wrong name or password. After ten wrong tries this name must wait 15 minutes.',
  offline: 'No connection to the shop’s server. Try again in a moment.',
  empty: 'Enter your name and password.',
} as const

type Problem = keyof typeof words

async function trySignIn(name: string, password: string): Promise<Problem | null> {
  if (name.trim() === '' || password === '') return 'empty'
  // Asked first: without an answer here, `signIn` would leave the page and what was typed on it.
  if (!(await getCsrfToken())) return 'offline'
  const answer = await signIn('credentials', { name, password, redirect: false }).catch(() => null)
  if (!answer) return 'offline'
  return answer.ok && !answer.error ? null : 'wrong'
}

export function SignInForm({ goTo }: { goTo: string }) {
  const [name, setName] = useState('')
  const [password, setPassword] = useState('')
  const [problem, setProblem] = useState<Problem | null>(null)
  const [pending, setPending] = useState(false)
  const notice = useRef<HTMLDivElement>(null)

  async function send() {
    if (pending) return
    setPending(true)
    setProblem(null)
    const found = await trySignIn(name, password)
    // A whole new page: everything on it is asked for by the person who is now signed in.
    if (!found) return window.location.assign(goTo)
    setProblem(found)
    setPending(false)
    if (found === 'wrong') setPassword('')
    setTimeout(() => notice.current?.focus())
  }

  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      {problem && (
        <Notice kind="stop" title="Not signed in" ref={notice}>
          <p>{words[problem]}</p>
        </Notice>
      )}
      <TextInput
        label="Name"
        name="name"
        autoComplete="username"
        autoCapitalize="none"
        spellCheck={false}
        autoFocus
        maxLength={100}
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <TextInput
        label="Password"
        name="password"
        type="password"
        autoComplete="current-password"
        maxLength={200}
        value={password}
        onChange={(event) => setPassword(event.target.value)}
      />
      <div className="row">
        <Button type="submit" variant="main" pending={pending} pendingLabel="Signing in…">
          Sign in
        </Button>
      </div>
      <Busy when={pending} label="Signing in…" />
    </form>
  )
}
