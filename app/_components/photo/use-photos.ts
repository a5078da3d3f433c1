'use client'
import { useEffect, useRef, useState } from 'react'
import { OperationIds } from '../form/operation-ids'
import { sendPhoto, type PhotoWords } from './send-photo'
import { shrink } from './shrink'

/** A photo that was taken here and is not kept by the server yet. */
export type Taken = {
  readonly key: number
  readonly picture: Blob
  /** Address of the picture in this browser's memory. */
  readonly preview: string
  readonly caption: string
  /** How far it is sent, 0 to 1; null: it is not on its way. */
  readonly sent: number | null
  /** Why it was not kept; '' when nothing went wrong. */
  readonly problem: string
}

export type Photos = {
  readonly taken: readonly Taken[]
  readonly pending: boolean
  readonly take: (files: FileList | null) => Promise<void>
  readonly caption: (key: number, caption: string) => void
  readonly drop: (key: number) => void
  /** Sends what is here, one after the other; gives back how many are still here. What was not kept stays. */
  readonly send: (words: Omit<PhotoWords, 'caption'>) => Promise<number>
}

/** Photos in a form: taken, shown, captioned, sent once each. A failed one stays and can be sent again. */
export function usePhotos(): Photos {
  const [taken, setTaken] = useState<readonly Taken[]>([])
  const [pending, setPending] = useState(false)
  const sending = useRef(false)
  const attempts = useRef(new Map<number, OperationIds>())
  const previews = useRef(new Set<string>())
  const lastKey = useRef(0)

  useEffect(() => {
    const all = previews.current
    return () => all.forEach((preview) => URL.revokeObjectURL(preview))
  }, [])

  const change = (key: number, part: Partial<Taken>) =>
    setTaken((now) => now.map((one) => (one.key === key ? { ...one, ...part } : one)))

  async function take(files: FileList | null) {
    for (const file of Array.from(files ?? [])) {
      const picture = await shrink(file)
      const preview = URL.createObjectURL(picture)
      previews.current.add(preview)
      lastKey.current += 1
      const key = lastKey.current
      setTaken((now) => [...now, { key, picture, preview, caption: '', sent: null, problem: '' }])
    }
  }

  function drop(key: number) {
    setTaken((now) => now.filter((one) => one.key !== key))
    attempts.current.delete(key)
  }

  async function sendOne(one: Taken, words: Omit<PhotoWords, 'caption'>): Promise<boolean> {
    const attempt = attempts.current.get(one.key) ?? new OperationIds()
    attempts.current.set(one.key, attempt)
    const whole = { ...words, caption: one.caption.trim() }
    change(one.key, { sent: 0, problem: '' })
    const answer = await sendPhoto(attempt.idFor(whole), whole, one.picture, (sent) => change(one.key, { sent }))
    if (answer.answered) attempt.answered()
    const refusal = !answer.answered ? answer.refusal : answer.result.ok ? null : answer.result.refusal
    if (refusal) change(one.key, { sent: null, problem: refusal.message })
    else drop(one.key)
    return refusal === null
  }

  async function send(words: Omit<PhotoWords, 'caption'>): Promise<number> {
    if (sending.current) return taken.length
    sending.current = true
    setPending(true)
    let left = 0
    for (const one of taken) left += (await sendOne(one, words)) ? 0 : 1
    sending.current = false
    setPending(false)
    return left
  }

  return { taken, pending, take, caption: (key, caption) => change(key, { caption }), drop, send }
}
