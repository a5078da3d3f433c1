'use client'
import { Link } from '@/app/_components/ui/link'
import { useEffect, useRef, useState, type ReactNode, type Ref } from 'react'
import type { Refusal } from '@/lib/core/errors'
import { buzz } from '../ui/buzz'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'

type Props = {
  refusal: Refusal
  title: string
  ref?: Ref<HTMLDivElement>
  children?: ReactNode
}

/** Why it was not done: at its fields, with the way to the first of them; else in words, with a link to each gap. */
export function RefusalNotice({ refusal, title, ref, children }: Props) {
  const inside = useRef<HTMLDivElement>(null)
  const [atFields, setAtFields] = useState(false)
  const wrong = Object.keys(refusal.fields ?? {}).length
  useEffect(buzz, [refusal])
  useEffect(() => setAtFields(wrong > 0 && firstWrong(inside.current) !== null), [wrong, refusal])
  return (
    <Notice kind="stop" title={title} ref={ref}>
      <div ref={inside}>
        {atFields ? (
          <div className="row">
            <p>{wrong === 1 ? 'One field needs a change.' : `${wrong} fields need a change.`}</p>
            <Button variant="quiet" onClick={() => firstWrong(inside.current)?.focus()}>
              {wrong === 1 ? 'Show it' : 'Show the first'}
            </Button>
          </div>
        ) : (
          <p>{refusal.message}</p>
        )}
      </div>
      {children}
      {refusal.gaps && refusal.gaps.length > 0 && (
        <ul className="plain-list" aria-label="What stands in the way">
          {refusal.gaps.map(({ message, href }) => (
            <li key={message + href}>
              <Link href={href}>{message}</Link>
            </li>
          ))}
        </ul>
      )}
    </Notice>
  )
}

/** The first control of the form or section around it that carries an error. */
function firstWrong(inside: HTMLElement | null): HTMLElement | null {
  const found = inside?.closest('form, section')?.querySelector<HTMLElement>('[aria-invalid="true"]') ?? null
  return found instanceof HTMLFieldSetElement ? found.querySelector<HTMLElement>('input, button') : found
}
