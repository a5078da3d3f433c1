'use client'
import { PickSelect } from '@/app/_components/pick/pick-select'
import type { Picks } from '@/app/_components/pick/use-picks'
import { Check } from '@/app/_components/ui/check'
import { Choice } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import { appliesTo, type ChamberShape } from '@/lib/core/casting/chamber-shape'
import { castingFigureKeys, castingFigures, type CastingFacts } from '@/lib/core/casting/figures'
import { camAnswerOptions } from '@/lib/core/engine/cam-answer'
import { engineFigureKeys, engineFigures } from '@/lib/core/engine/figures'
import { formatFigure } from '@/lib/core/units/format-figure'
import { quantities } from '@/lib/core/units/quantities'
import styles from './bench-question.module.css'
import type { FieldName } from './typed-field'

type Props = {
  text: (name: FieldName) => {
    name: string
    error: string | undefined
    defaultValue?: string
    defaultChecked?: boolean
  }
  castings: Picks<'castings'>
  castingId: string
  /** What the casting's record says, shown where nothing is typed over it. */
  record: CastingFacts
  hasTarget: boolean
  shape: ChamberShape
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

const noCastings = 'None on record yet. Type the figures of the head, or add its casting in the Back room.'

/** A simple question is three fields; the rest unfolds. */
export function BenchQuestionFields({ text, castings, castingId, record, hasTarget, shape }: Props) {
  const isFlatDeck = shape === 'flat-deck'
  const nominal = record.nominalCc
  return (
    <div className="stack">
      <div className={styles.fields}>
        <PickSelect
          label="Casting"
          empty="Not on record"
          hint={castings.known.length === 0 ? noCastings : undefined}
          picks={castings}
          wordsOf={({ name }) => name}
          {...text('castingId')}
          defaultValue={undefined}
          value={castingId}
          // The form around it reads what is picked.
          onChange={() => {}}
        />
        {isFlatDeck ? (
          <FlatDeckFields text={text} />
        ) : (
          <>
            <TextInput
              label="Chamber now, cc"
              hint={
                nominal === undefined
                  ? 'One figure, or one a chamber.'
                  : `Empty: nominal ${nominal} cc. One figure, or one a chamber.`
              }
              inputMode="decimal"
              autoComplete="off"
              {...text('presentCc')}
            />
            <TextInput label="Target, cc" inputMode="decimal" autoComplete="off" {...text('targetCc')} />
          </>
        )}
      </div>
      <div className="row">
        {!isFlatDeck && <Check label="Measured, not nominal" {...text('measured')} />}
        <Check label="A used head" {...text('used')} />
      </div>
      <div className={styles.fields}>
        {(!hasTarget || isFlatDeck) && (
          <TextInput
            label={isFlatDeck ? 'Clean-up: stop at the latest at' : 'No target: clean-up, stop at the latest at'}
            hint="8 thou, 0.008"
            inputMode="decimal"
            {...text('stopAtIn')}
          />
        )}
        <TextInput
          label="Seat work to come sinks the valves by"
          hint={
            isFlatDeck ? 'Every valve then lies that much deeper.' : 'The cut aims below the target by what it adds.'
          }
          inputMode="decimal"
          {...text('sinkIn')}
        />
        <TextInput
          label="Removed since new, as far as known"
          hint="Limits count from new. Empty on a used head: not known."
          inputMode="decimal"
          {...text('goneIn')}
        />
      </div>
      <div className={styles.folds}>
        <details>
          <summary>Engine</summary>
          <div className="stack">
            <Choice
              label="Layout"
              options={[
                { value: 'unknown', label: 'not known' },
                { value: 'inline', label: 'inline' },
                { value: 'v', label: 'V' },
              ]}
              {...text('layout')}
            />
            <Choice label="Cam in the head" options={camAnswerOptions} {...text('camInHead')} />
            <div className={styles.fields}>
              {engineFigureKeys.map((key) => (
                <TextInput
                  key={key}
                  label={withUnit(engineFigures[key])}
                  inputMode="decimal"
                  autoComplete="off"
                  {...text(`engine.${key}`)}
                />
              ))}
            </div>
          </div>
        </details>
        <details>
          <summary>Class limits</summary>
          <div className={styles.fields}>
            {!isFlatDeck && (
              <>
                <Check label="Flat cuts only" {...text('classFlatOnly')} />
                <TextInput label="Smallest chamber allowed, cc" inputMode="decimal" {...text('classMinCc')} />
              </>
            )}
            <TextInput label="Deepest cut allowed, in" inputMode="decimal" {...text('classMaxCut')} />
          </div>
        </details>
        <details>
          <summary>The head’s figures</summary>
          <div className="stack">
            <p className="soft">Enter what differs on this head. Empty uses the record.</p>
            <div className={styles.fields}>
              {castingFigureKeys
                .filter((key) => appliesTo(shape, key))
                .map((key) => {
                  const { quantity } = castingFigures[key]
                  const known = record[key]
                  return (
                    <TextInput
                      key={key}
                      label={withUnit(castingFigures[key])}
                      placeholder={known === undefined ? 'not on record' : formatFigure(known, quantity)}
                      inputMode="decimal"
                      autoComplete="off"
                      {...text(`figures.${key}`)}
                    />
                  )
                })}
            </div>
          </div>
        </details>
      </div>
    </div>
  )
}

/** A flat-deck head: how thick, and how its valves and injectors stand now. */
function FlatDeckFields({ text }: Pick<Props, 'text'>) {
  return (
    <>
      <TextInput
        label="Thickness wanted, in"
        hint="At the thinnest corner. Empty: a clean-up."
        inputMode="decimal"
        autoComplete="off"
        {...text('thicknessIn')}
      />
      <TextInput
        label="Thickness now, in"
        hint="At the thinnest corner. Empty: new less what was removed."
        inputMode="decimal"
        autoComplete="off"
        {...text('thicknessNow')}
      />
      <TextInput
        label="Intake valves below the deck now, in"
        hint="Minus where they stand proud."
        inputMode="decimal"
        autoComplete="off"
        {...text('intakeRecession')}
      />
      <TextInput
        label="Exhaust valves below the deck now, in"
        inputMode="decimal"
        autoComplete="off"
        {...text('exhaustRecession')}
      />
      <TextInput label="Injector protrusion now, in" inputMode="decimal" autoComplete="off" {...text('protrusion')} />
    </>
  )
}

function withUnit({ label, quantity }: { label: string; quantity: keyof typeof quantities }): string {
  const { unit } = quantities[quantity]
  return unit === '' ? capital(label) : `${capital(label)}, ${unit}`
}
