import type { BenchForm } from '@/lib/schemas/bench-question'

export type FieldName =
  | Exclude<keyof BenchForm, 'engine' | 'figures'>
  | `engine.${keyof BenchForm['engine']}`
  | `figures.${keyof BenchForm['figures']}`

type Parts = Readonly<Record<string, string | boolean | Readonly<Record<string, string>>>>

/** What a field starts with; what is typed from then on the browser holds. */
export function startOf(form: BenchForm, name: FieldName) {
  const [part = '', key = ''] = name.split('.')
  const value = (form as Parts)[part]
  if (typeof value === 'boolean') return { defaultChecked: value }
  return { defaultValue: (typeof value === 'object' ? value[key] : value) ?? '' }
}

/** The question with what its form's fields hold now; those that the form does not show keep what they had. */
export function typedIn(fields: HTMLFormElement, before: BenchForm): BenchForm {
  const form = { ...before, engine: { ...before.engine }, figures: { ...before.figures } }
  for (const field of fields.elements) {
    const isInput = field instanceof HTMLInputElement
    if ((!isInput && !(field instanceof HTMLSelectElement)) || field.name === '') continue
    if (isInput && field.type === 'radio' && !field.checked) continue
    const [part = '', key] = field.name.split('.')
    const into = key === undefined ? form : part === 'engine' ? form.engine : form.figures
    Object.assign(into, { [key ?? part]: isInput && field.type === 'checkbox' ? field.checked : field.value })
  }
  return form
}
