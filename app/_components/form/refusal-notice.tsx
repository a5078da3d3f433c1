import Link from 'next/link'
import type { Ref } from 'react'
import type { Refusal } from '@/lib/core/errors'
import { Notice } from '../ui/notice'

type Props = { refusal: Refusal; title: string; ref?: Ref<HTMLDivElement> }

/** Why it was not done, in words, with a link to each thing that stands in the way. */
export function RefusalNotice({ refusal, title, ref }: Props) {
  return (
    <Notice kind="stop" title={title} ref={ref}>
      <p>{refusal.message}</p>
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
