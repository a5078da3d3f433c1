'use client'
import type { ComponentProps, ReactNode } from 'react'
import { Choice } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import { camAnswerOptions } from '@/lib/core/engine/cam-answer'
import { engineFigureKeys, engineFigures, type EngineFigureKey } from '@/lib/core/engine/figures'
import type { Quantity } from '@/lib/core/units/quantities'
import styles from './booking.module.css'

type EngineText = 'engine.label' | 'engine.layout' | 'engine.camInHead'
type Registered = Pick<ComponentProps<'input'>, 'name' | 'onChange' | 'onBlur' | 'ref'> & {
  name: string
  error?: string
}

type Props = {
  /** Props of the form's own fields. */
  text: (name: EngineText) => Registered
  figure: (key: EngineFigureKey, words: { label: string; quantity: Quantity }) => ReactNode
}

const layouts = [
  { value: 'unknown', label: 'not known' },
  { value: 'inline', label: 'inline' },
  { value: 'v', label: 'V' },
]

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** What is known of the engine; all of it may stay empty. */
export function EngineFields({ text, figure }: Props) {
  return (
    <>
      <p className="soft">Leave empty what is not known: what depends on it says what it needs.</p>
      <TextInput label="Engine" hint="As the customer calls it." {...text('engine.label')} />
      <Choice label="Layout" options={layouts} {...text('engine.layout')} />
      <Choice label="Cam in the head" options={camAnswerOptions} {...text('engine.camInHead')} />
      <div className={styles.fields}>
        {engineFigureKeys.map((key) =>
          figure(key, { label: capital(engineFigures[key].label), quantity: engineFigures[key].quantity }),
        )}
      </div>
    </>
  )
}
