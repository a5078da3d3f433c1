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
  /** Whether there is nothing to send: neither here, nor still being read. */
  readonly isEmpty: () => boolean
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
  // What is here at this moment: a picture may be ready, and its caption typed, after what sends it was drawn.
  const here = useRef<readonly Chosen[]>([])
  const reading = useRef(new Set<Promise<void>>())
  const ids = useRef(new Map<number, OperationIds>())
  const previews = useRef(new Set<string>())
  const lastKey = useRef(0)

  useEffect(() => {
    const all = previews.current
    return () => all.forEach((preview) => URL.revokeObjectURL(preview))
  }, [])

  function put(all: readonly Chosen[]) {
    here.current = all
    setChosen(all)
  }

  const change = (key: number, part: Partial<Chosen>) =>
    put(here.current.map((one) => (one.key === key ? { ...one, ...part } : one)))

  /** A large picture takes a tablet a second: whoever sends meanwhile sends it too. */
  async function choose(files: FileList | null) {
    const work = readAll(Array.from(files ?? []))
    reading.current.add(work)
    await work.finally(() => reading.current.delete(work))
  }

  async function readAll(files: readonly File[]) {
    for (const picked of files) {
      const prepared = await prepare(picked)
      const preview = URL.createObjectURL(prepared.file)
      previews.current.add(preview)
      lastKey.current += 1
      const one = { key: lastKey.current, ...prepared, preview, caption: '', sent: null, problem: '', unusable: false }
      put(single ? [one] : [...here.current, one])
    }
  }

  function drop(key: number) {
    put(here.current.filter((one) => one.key !== key))
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
    if (sending.current) return here.current.length
    sending.current = true
    setPending(true)
    await Promise.allSettled(reading.current)
    let left = 0
    for (const one of here.current) left += (await sendOne(one, wordsOf(one))) ? 0 : 1
    sending.current = false
    setPending(false)
    // The answer to an upload brings no page.
    if (refreshes) router.refresh()
    return left
  }

  const isEmpty = () => here.current.length === 0 && reading.current.size === 0

  return { chosen, pending, isEmpty, choose, change, drop, send }
}
