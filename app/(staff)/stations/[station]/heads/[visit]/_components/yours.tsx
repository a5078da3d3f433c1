import { answerKey, typedReadings, type Answers } from './answers'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'

type Deed = 'tick' | 'record' | 'start'

const yourDeed: Record<Deed, string> = { tick: 'Tick the step', record: 'Save the readings', start: 'Start the step' }

type YoursProps = { screen: StepScreen; answers: Answers; deed: Deed }

/** What was about to be done here: the deed, and what was typed. */
export function Yours({ screen, answers, deed }: YoursProps) {
  const typed = deed === 'start' ? [] : typedReadings(answers)
  const labelOf = (key: string) => {
    const field = screen.fields.find(({ kind, point }) => answerKey(kind, point) === key)
    return [field?.spec.label, field?.pointLabel].filter(Boolean).join(', ')
  }
  return (
    <>
      <p>{yourDeed[deed]}.</p>
      <ul>
        {typed.map(({ kind, point, text, notTaken }) => (
          <li key={answerKey(kind, point)}>
            {labelOf(answerKey(kind, point))}: {notTaken === null ? text : `not taken, ${notTaken}`}
          </li>
        ))}
      </ul>
    </>
  )
}
