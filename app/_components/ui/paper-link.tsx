'use client'
import { useState, type MouseEvent } from 'react'
import { Busy } from './busy'
import { ButtonLink } from './button-link'
import type { ButtonVariant } from './button'

type Props = { href: string; children: string; pages: number; variant?: ButtonVariant }
type Making = 'no' | 'yes' | 'made' | string

/**
 * A link to a paper that takes a while to make: it is made first, with its progress shown here, and then opened, ready.
 * Without scripts, or with a key held down, it is a plain link.
 */
export function PaperLink({ href, children, pages, variant = 'plain' }: Props) {
  const [making, setMaking] = useState<Making>('no')

  async function make(event: MouseEvent<HTMLAnchorElement>) {
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return
    event.preventDefault()
    if (making === 'yes') return
    setMaking('yes')
    const answer = await fetch(href).catch(() => null)
    if (!answer) return setMaking('The shop’s machine does not answer. Try again when the network is back.')
    if (!answer.ok) return setMaking(await answer.text())
    await answer.blob()
    const tab = window.open(href, '_blank')
    if (tab) tab.opener = null
    setMaking(tab ? 'no' : 'made')
  }

  const isRefusal = !['no', 'yes', 'made'].includes(making)
  return (
    <div className="stack">
      <ButtonLink href={href} prefetch={false} target="_blank" variant={variant} onClick={make}>
        {children}
      </ButtonLink>
      <Busy when={making === 'yes'} label={`Making ${pages} ${pages === 1 ? 'page' : 'pages'}…`} />
      <div role="status">
        {making === 'made' && (
          <a href={href} target="_blank" rel="noreferrer">
            Open it: it is ready
          </a>
        )}
        {isRefusal && making}
      </div>
    </div>
  )
}
