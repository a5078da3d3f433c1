'use client'
import { useRef, useState, type KeyboardEvent, type SubmitEvent } from 'react'
import { Busy } from '@/app/_components/ui/busy'
import { Button } from '@/app/_components/ui/button'
import { TextInput } from '@/app/_components/ui/text-input'
import { parseTag, tagText } from '@/lib/core/shop/tag-number'
import styles from './label-picker.module.css'

type Props = {
  /** Added before: a form without scripts asks for them again. */
  added: readonly string[]
  looking: boolean
  onTag: (number: string) => void
}

/**
 * A tag that is typed or scanned is picked; the box is ready for the next one at once. The box keeps its own text: a
 * scanner is quicker than the page's script.
 */
export function AddTag({ added, looking, onTag }: Props) {
  const box = useRef<HTMLInputElement>(null)
  const [error, setError] = useState('')

  function add(event: SubmitEvent | KeyboardEvent) {
    event.preventDefault()
    const tag = parseTag(tagText(box.current?.value ?? ''))
    if (!tag.ok) return setError(tag.refusal.message)
    setError('')
    if (box.current) box.current.value = ''
    onTag(tag.value.number)
  }

  return (
    <form action="/counter/labels" method="get" className={styles.add} onSubmit={add}>
      {added.map((tag) => (
        <input key={tag} type="hidden" name="tag" value={tag} />
      ))}
      <TextInput
        ref={box}
        name="tag"
        label="Type or scan a tag"
        error={error}
        maxLength={200}
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        // By way of the button a scan right after another would pass for a glove that bounced.
        onKeyDown={(event) => {
          if (event.key === 'Enter') add(event)
        }}
      />
      <Button type="submit">Select</Button>
      <Busy when={looking} label="Searching…" />
    </form>
  )
}
