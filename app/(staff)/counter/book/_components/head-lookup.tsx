'use client'
import { useState } from 'react'
import { useWatch } from 'react-hook-form'
import { HitLine } from '@/app/_components/shell/hit-line'
import { useFound } from '@/app/_components/shell/use-found'
import { Button } from '@/app/_components/ui/button'
import { TextInput } from '@/app/_components/ui/text-input'
import type { HeadHit } from '@/lib/use-cases/find/hits'
import type { BookingActionForm } from './booking-action-form'
import styles from './booking.module.css'

type Props = { form: BookingActionForm; at: number }

/** A head that was here before keeps its history: found by tag, stamp or casting marks. */
export function HeadLookup({ form, at }: Props) {
  const head = useWatch({ control: form.form.control, name: `heads.${at}` })
  const { error } = form.text(`heads.${at}.headId`)
  if (!head || head.headId === '') return <Ask form={form} at={at} error={error} />
  return (
    <div className="stack">
      <div className={styles.chosen}>
        <span>
          Was here before: <strong>{[head.stamp, head.marks].filter(Boolean).join(', ') || 'without stamp'}</strong>
        </span>
        <Button onClick={() => choose(form, at, { headId: '', stamp: '', marks: '' })}>Not this one</Button>
      </div>
      {error && <p role="alert">{error}</p>}
    </div>
  )
}

function choose(
  form: BookingActionForm,
  at: number,
  head: { headId: string; stamp: string; marks: string; castingId?: string; tag?: string },
) {
  form.form.setValue(`heads.${at}`, { ...form.form.getValues(`heads.${at}`), ...head }, { shouldDirty: true })
  form.form.clearErrors(`heads.${at}`)
}

function Ask({ form, at, error }: Props & { error: string | undefined }) {
  const [text, setText] = useState('')
  const found = useFound('heads', text)
  const pick = ({ headId, stamp, marks, castingId, tag, worn }: HeadHit) =>
    choose(form, at, { headId, stamp, marks, castingId: castingId ?? '', tag: worn ? tag : '' })
  return (
    <div className={styles.lookup}>
      <TextInput
        label="Was it here before?"
        hint="Tag, stamp or casting marks."
        error={error}
        autoComplete="off"
        value={text}
        onChange={(event) => setText(event.target.value)}
      />
      <p role="status" className={found?.length === 0 ? 'soft' : 'visually-hidden'}>
        {found &&
          (found.length === 0 ? 'No such head on record.' : found.length === 1 ? '1 match' : `${found.length} matches`)}
      </p>
      {found && found.length > 0 && (
        <ul className={styles.found} aria-label="Heads on record">
          {found.map((hit) => (
            <li key={hit.headId}>
              <button type="button" className={styles.pick} onClick={() => pick(hit)}>
                <HitLine hit={hit} />
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}
