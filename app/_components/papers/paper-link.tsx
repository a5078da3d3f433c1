'use client'
import type { MouseEvent } from 'react'
import type { ButtonVariant } from '@/app/_components/ui/button-class'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { MakingNote, useMaking } from './use-making'

type Props = { href: string; children: string; pages: number; variant?: ButtonVariant }

/**
 * A link to a paper that takes a while to make: it is made first, with its progress shown here, and then opened, ready.
 * Without scripts, or with a key held down, it is a plain link.
 */
export function PaperLink({ href, children, pages, variant = 'plain' }: Props) {
  const { making, make } = useMaking()

  function ask(event: MouseEvent<HTMLAnchorElement>) {
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return
    event.preventDefault()
    void make(href, pages)
  }

  return (
    <div className="stack">
      <ButtonLink href={href} target="_blank" variant={variant} onClick={ask}>
        {children}
      </ButtonLink>
      <MakingNote making={making} />
    </div>
  )
}
