'use client'
import { useState, type ReactNode } from 'react'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { useAction } from '@/app/_components/form/use-action'
import { buzz } from '@/app/_components/ui/buzz'
import { Button } from '@/app/_components/ui/button'
import { PhotosFirstContext, usePhotosFirst } from '@/app/_components/photo/photos-first'
import { Notice } from '@/app/_components/ui/notice'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { useCatchUp } from '../../../../_app/use-catch-up'
import { useDeeds, type DeedValue } from '../../../../_app/use-deeds'
import { answerKey, atValves, changedKeys, fieldGroups, figureKeys, typedReadings, type Answers } from './answers'
import { FlowConditions, InWords, StepConflict, ValveSheet, Yours } from './later'
import type { ReadWithProps } from './read-with'
import { StepFields } from './step-fields'
import { ScreenFrame } from './screen-frame'
import styles from './step.module.css'
import { openAsks, useCellAsks } from './use-cell-asks'
import { stepDraftKey, useStepEntry } from './use-step-entry'

type Deed = 'tick' | 'record' | 'start'

const done: Record<Deed, string> = {
  tick: 'Ticked.',
  record: 'Readings saved. The step is not ticked yet.',
  start: 'Started.',
}

/** What became of it: a figure may have put the head on hold. */
function saidOf(what: Deed, { held = [], keptAs }: DeedValue): string {
  if (keptAs !== undefined) return 'Kept here. It is sent when the server answers.'
  return held.length === 0 ? done[what] : `${done[what]} The head is on hold: ${held.join(' ')}`
}

/** As the list of what was not sent says it. */
const doneWords: Record<Deed, string> = { tick: 'done', record: 'readings', start: 'started' }

const notDone: Record<Deed, string> = { tick: 'Not ticked', record: 'Not saved', start: 'Not started' }

type Props = {
  screen: StepScreen
  /** False while it has only just come: the second of two slow taps that took the tick back must not tick again. */
  settled?: boolean
  /** Number of the repeat of a flow run that is entered; left out: the step itself, which is then ticked. */
  repeat?: number
  onRepeated?: () => void
  notices?: ReactNode
  /** What is to be read over the cells, and under them. */
  above?: ReactNode
  below?: ReactNode
}

/** The one thing to do at this step: the readings it owes and one large button. Nothing typed is lost. */
export function StepForm({ screen, settled = true, repeat, onRepeated, notices, above, below }: Props) {
  const { step, visitId } = screen
  const deeds = useDeeds()
  const catchUp = useCatchUp()
  const draftKey = stepDraftKey(screen, repeat)
  const { entry, change, clear } = useStepEntry(draftKey, screen.lastConditions)
  const { run, repeat: again, pending: sending, refusal, refusalRef, edited, clear: clearRefusal } = useAction(draftKey)
  const [deed, setDeed] = useState<Deed>('tick')
  const [said, setSaid] = useState('')

  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const [unanswered, setUnanswered] = useState(0)
  const photos = usePhotosFirst()
  const [photosGo, setPhotosGo] = useState(false)
  const pending = sending || photosGo
  const keys = figureKeys(screen.fields, entry.answers)
  const asks = useCellAsks(screen.facts, keys, entry.answers)

  const hasFields = screen.fields.length > 0
  const hasFigures = screen.fields.some(({ spec }) => spec.form === 'figure')
  const typed = typedReadings(entry.answers, entry.instruments)

  async function send(what: Deed) {
    setDeed(what)
    setSaid('')
    if (what === 'record' && typed.length === 0) return setSaid('Nothing typed yet.')
    const open = what === 'start' ? [] : openAsks(asks)
    setLeft(new Set(keys))
    setUnanswered(open.length)
    if (open.length > 0) return buzz()
    if (what !== 'start' && photos.any()) {
      setPhotosGo(true)
      const saved = await photos.sendAll()
      setPhotosGo(false)
      if (!saved) return setSaid(`${notDone[what]}: the photo is not saved yet. Try again.`)
    }
    const seen = {
      visitId,
      step: { stepId: step.stepId, occurrence: step.occurrence, orderId: step.orderId },
      seen: screen.seen,
    }
    const readings = {
      readings: typed,
      instrumentId: null,
      conditions: step.stepId === 'flow' ? { ...entry.conditions, run: String(repeat ?? 1) } : {},
      takenAt: null,
    }
    const after = {
      name: what,
      onTaken: () => what !== 'start' && clear(),
      onDone: (result: DeedValue) => {
        setSaid(saidOf(result.ticked === false ? 'record' : what, result))
        if (repeat !== undefined) onRepeated?.()
      },
    }
    const words = `${screen.tag}: ${step.label}, ${doneWords[what]}`
    if (what === 'start') run({ ...after, action: deeds('start', words), input: seen })
    else if (what === 'record')
      run({ ...after, action: deeds('record-readings', words), input: { ...seen, entry: readings } })
    else run({ ...after, action: deeds('tick', words), input: { ...seen, entry: hasFields ? readings : null } })
  }

  function changeAnswers(answers: Answers) {
    const changed = changedKeys(entry.answers, answers)
    edited(...changed)
    setLeft((now) => new Set([...now].filter((key) => !changed.includes(key))))
    setUnanswered(0)
    change({ answers })
  }

  function useTheirs() {
    clear(screen.lastConditions)
    clearRefusal()
    void catchUp()
  }

  const readWith: ReadWithProps = {
    screen,
    instruments: entry.instruments,
    onChange: (instruments) => change({ instruments }),
  }

  const commit = (
    <>
      <Button
        variant="main"
        data-commit
        pending={pending}
        disabled={repeat === undefined ? !settled : typed.length === 0}
        onClick={() => void send(repeat === undefined ? 'tick' : 'record')}
      >
        {commitLabel(hasFields, repeat)}
      </Button>
      {repeat === undefined && hasFields && (
        <Button pending={pending} disabled={!settled} onClick={() => void send('record')}>
          Save
        </Button>
      )}
      {repeat === undefined && !hasFigures && step.state !== 'started' && (
        <Button pending={pending} disabled={!settled} onClick={() => void send('start')}>
          Start
        </Button>
      )}
    </>
  )

  return (
    <PhotosFirstContext value={photos}>
      <ScreenFrame
        label={step.label}
        withKeys={hasFigures}
        isEditing={typed.length > 0}
        said={<p role="status">{said}</p>}
        commit={commit}
      >
        {refusal?.theirs ? (
          <StepConflict
            screen={screen}
            theirs={refusal.theirs}
            yours={<Yours screen={screen} answers={entry.answers} deed={deed} />}
            pending={pending}
            onKeepMine={again}
            onUseTheirs={useTheirs}
          />
        ) : (
          refusal && <RefusalNotice refusal={refusal} title={notDone[deed]} ref={refusalRef} />
        )}
        {unanswered > 0 && (
          <Notice kind="caution" title={notDone[deed]}>
            <p>
              {unanswered === 1 ? 'One figure needs a look.' : `${unanswered} figures need a look.`} Type an unlikely
              one again to keep it, or correct it.
            </p>
          </Notice>
        )}
        {notices}
        {above}
        <div className={styles.fields}>
          {screen.fields.some(atValves) && (
            <ValveSheet
              fields={screen.fields.filter(atValves)}
              answers={entry.answers}
              errors={refusal?.fields ?? {}}
              asks={asks}
              settled={left}
              facts={screen.facts}
              seatAngles={screen.seatAngles}
              readWith={readWith}
              onSettle={(key) => setLeft((now) => new Set([...now, key]))}
              onChange={changeAnswers}
            />
          )}
          {fieldGroups(screen.fields.filter((field) => !atValves(field))).map((fields) => (
            <StepFields
              key={fields[0]?.kind}
              fields={fields}
              answers={entry.answers}
              errors={refusal?.fields ?? {}}
              asks={asks}
              settled={left}
              onSettle={(key) => setLeft((now) => new Set([...now, key]))}
              readWith={readWith}
              withFigures={hasFigures}
              photoTo={{ visitId, stepId: step.stepId, occurrence: step.occurrence }}
              onChange={changeAnswers}
            />
          ))}
          {hasFigures &&
            screen.fields
              .filter(({ spec }) => spec.mayBeWords && spec.choices)
              .map((field) => (
                <InWords
                  key={answerKey(field.kind, field.point)}
                  field={field}
                  answers={entry.answers}
                  onChange={changeAnswers}
                />
              ))}
        </div>
        {step.stepId === 'flow' && (
          <FlowConditions
            values={entry.conditions}
            errors={refusal?.fields ?? {}}
            onChange={(conditions) => {
              edited(...Object.keys(conditions).filter((key) => conditions[key] !== entry.conditions[key]))
              change({ conditions })
            }}
          />
        )}
        {below}
      </ScreenFrame>
    </PhotosFirstContext>
  )
}

const commitLabel = (hasFields: boolean, repeat: number | undefined): string =>
  repeat === undefined ? (hasFields ? 'Save and done' : 'Done') : `Save run ${repeat}`
