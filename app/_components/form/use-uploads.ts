'use client'
import { useRouter } from 'next/navigation'
import { use, useEffect, useRef, useState } from 'react'
import type { RefusalCode } from '@/lib/core/errors'
import { callAction } from './call-action'
import { OperationIds } from './operation-ids'
import { FileSenderContext } from './file-sender'
import type { Upload } from './send-file'

export type Size = { readonly widthPx: number; readonly heightPx: number }

/** A picture that was chosen here and is not on the server yet. */
export type Chosen = {
  readonly key: number
  readonly file: Blob
  /** Address of the picture in this browser's memory. */
  readonly preview: string
  /** Null: not measured, or this browser cannot read it. */
  readonly size: Size | null
  readonly caption: string
  /** How far it is sent, 0 to 1; null: it is not on its way. */
  readonly sent: number | null
  /** Why it was not saved; '' when nothing went wrong. */
  readonly problem: string
  /** The same picture would be refused again. */
  readonly unusable: boolean
}

type Options = {
  readonly address: string
  /** "The photo" */
  readonly what: string
  /** One takes the place of the other. */
  readonly single?: boolean
  /** The picture as it is sent, from the file that was chosen. */
  readonly prepare: (file: File) => Promise<{ readonly file: Blob; readonly size: Size | null }>
}

/** Refusals that the same picture meets again. */
const unusable: ReadonlySet<RefusalCode> = new Set(['unreadable', 'out-of-range', 'too-large'])

export type Uploads = {
  readonly chosen: readonly Chosen[]
  readonly pending: boolean
  readonly choose: (files: FileList | null) => Promise<void>
  readonly change: (key: number, part: Partial<Chosen>) => void
  readonly drop: (key: number) => void
  /** Sends what is here, one after the other; gives back how many are still here. What was not saved stays. */
  readonly send: (wordsOf: (one: Chosen) => Upload['words']) => Promise<number>
}

/** Pictures in a form: chosen, looked at, sent once each. A failed one stays and can be sent again. */
export function useUploads({ address, what, single = false, prepare }: Options): Uploads {
  const router = useRouter()
  const { send: sendFile, refreshes } = use(FileSenderContext)
  const [chosen, setChosen] = useState<readonly Chosen[]>([])
  const [pending, setPending] = useState(false)
  const sending = useRef(false)
  const ids = useRef(new Map<number, OperationIds>())
  const previews = useRef(new Set<string>())
  const lastKey = useRef(0)

  useEffect(() => {
    const all = previews.current
    return () => all.forEach((preview) => URL.revokeObjectURL(preview))
  }, [])

  const change = (key: number, part: Partial<Chosen>) =>
    setChosen((now) => now.map((one) => (one.key === key ? { ...one, ...part } : one)))

  async function choose(files: FileList | null) {
    for (const picked of Array.from(files ?? [])) {
      const prepared = await prepare(picked)
      const preview = URL.createObjectURL(prepared.file)
      previews.current.add(preview)
      lastKey.current += 1
      const one = { key: lastKey.current, ...prepared, preview, caption: '', sent: null, problem: '', unusable: false }
      setChosen((now) => (single ? [one] : [...now, one]))
    }
  }

  function drop(key: number) {
    setChosen((now) => now.filter((one) => one.key !== key))
    ids.current.delete(key)
  }

  async function sendOne(one: Chosen, words: Upload['words']): Promise<boolean> {
    const id = ids.current.get(one.key) ?? new OperationIds()
    ids.current.set(one.key, id)
    change(one.key, { sent: 0, problem: '' })
    const to = { address, what, onProgress: (sent: number) => change(one.key, { sent }) }
    const answer = await callAction((call) => sendFile(to, call), await id.callFor({ words, file: one.file }))
    if (answer.kind !== 'lost') id.answered()
    if (answer.kind === 'taken' || answer.kind === 'moved') {
      drop(one.key)
      return true
    }
    const { code, message } = answer.refusal
    change(one.key, { sent: null, problem: message, unusable: unusable.has(code) })
    return false
  }

  async function send(wordsOf: (one: Chosen) => Upload['words']): Promise<number> {
    if (sending.current) return chosen.length
    sending.current = true
    setPending(true)
    let left = 0
    for (const one of chosen) left += (await sendOne(one, wordsOf(one))) ? 0 : 1
    sending.current = false
    setPending(false)
    // The answer to an upload brings no page.
    if (refreshes) router.refresh()
    return left
  }

  return { chosen, pending, choose, change, drop, send }
}
