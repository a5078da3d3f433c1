'use client'
import { useState } from 'react'
import { Busy } from '@/app/_components/ui/busy'
import { Sign } from '@/app/_components/ui/sign'
import { makePaper } from './make-paper'

type Making =
  | { readonly at: 'rest' }
  | { readonly at: 'work'; readonly pages: number }
  | { readonly at: 'ready'; readonly href: string }
  | { readonly at: 'refused'; readonly why: string }

export type PaperMaking = {
  readonly making: Making
  readonly make: (href: string, pages: number) => Promise<void>
  /** Says why nothing was asked of the server at all. */
  readonly refuse: (why: string) => void
  /** What was asked for is another now: why the last was not made no longer matters. */
  readonly askOther: () => void
}

/** A paper is made first, with its progress shown by `MakingNote`, and then opened, ready. */
export function useMaking(): PaperMaking {
  const [making, setMaking] = useState<Making>({ at: 'rest' })

  async function make(href: string, pages: number) {
    if (making.at === 'work') return
    setMaking({ at: 'work', pages })
    const made = await makePaper(href)
    if (!made.ok) return setMaking({ at: 'refused', why: made.why })
    const tab = window.open(href, '_blank')
    if (tab) tab.opener = null
    // A browser that lets no page open another gets a link instead.
    setMaking(tab ? { at: 'rest' } : { at: 'ready', href })
  }

  return {
    making,
    make,
    refuse: (why) => setMaking({ at: 'refused', why }),
    askOther: () => setMaking((now) => (now.at === 'refused' ? { at: 'rest' } : now)),
  }
}

/** How far it is, or why it is not made. Leave it mounted: it is announced when it changes. */
export function MakingNote({ making }: { making: Making }) {
  const pages = making.at === 'work' ? making.pages : 0
  return (
    <div>
      <Busy when={making.at === 'work'} label={`Making ${pages} ${pages === 1 ? 'page' : 'pages'}…`} />
      <div role="status">
        {making.at === 'ready' && (
          <a href={making.href} target="_blank" rel="noreferrer">
            Ready: open it
          </a>
        )}
        {making.at === 'refused' && (
          <>
            <Sign kind="caution" /> {making.why}
          </>
        )}
      </div>
    </div>
  )
}
