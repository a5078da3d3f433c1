'use client'
import { useSettled } from '@/app/_components/ui/use-settled'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { StepDone } from './step-done'
import { StepForm } from './step-form'

/** The step as it stands: what there is to do, or what was done. Each comes up in the place of the other. */
export function StepWork({ screen }: { screen: StepScreen }) {
  const done = screen.step.state === 'done' || screen.step.state === 'waived'
  const settled = useSettled(done ? 'done' : 'to do')
  return done ? <StepDone screen={screen} settled={settled} /> : <StepForm screen={screen} settled={settled} />
}
