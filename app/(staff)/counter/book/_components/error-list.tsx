'use client'
import { useFormState, type FieldErrors, type FieldPath } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import type { BookJobForm } from '@/lib/schemas/job'
import type { BookingActionForm } from './booking-action-form'
import { fieldWords } from './field-words'

type Wrong = { name: FieldPath<BookJobForm>; message: string }

/** All wrong fields of a form, however deep. */
function wrongFields(errors: unknown, path: readonly string[] = []): Wrong[] {
  if (typeof errors !== 'object' || errors === null) return []
  if ('message' in errors && typeof errors.message === 'string') {
    return [{ name: path.join('.') as FieldPath<BookJobForm>, message: errors.message }]
  }
  return Object.entries(errors).flatMap(([key, value]) =>
    key === 'ref' ? [] : wrongFields(value, key === 'root' ? path : [...path, key]),
  )
}

/** After an attempt: what is wrong, each with a way to its field, so that none hides in a folded part. */
export function ErrorList({ form }: { form: BookingActionForm }) {
  const { errors, submitCount } = useFormState({ control: form.form.control })
  const wrong = wrongFields(errors satisfies FieldErrors<BookJobForm>)
  if (submitCount === 0 || wrong.length === 0) return null
  return (
    <Notice kind="stop" title={wrong.length === 1 ? 'One field needs a look' : `${wrong.length} fields need a look`}>
      <ul className="plain-list">
        {wrong.map(({ name, message }) => (
          <li key={name} className="row spread">
            <span>
              <strong>{fieldWords(name)}</strong>: {message}
            </span>
            <Button variant="quiet" onClick={() => form.form.setFocus(name)}>
              Go there
            </Button>
          </li>
        ))}
      </ul>
    </Notice>
  )
}
