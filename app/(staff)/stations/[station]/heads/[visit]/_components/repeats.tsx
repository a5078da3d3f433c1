import { Button } from '@/app/_components/ui/button'
import type { FlowStepView } from '@/lib/use-cases/flow/see-flow-step'

/** A flow step can be run again, done or not: the repeat is a run of its own beside the first. */
export function Repeats({ flow, said, onAgain }: { flow: FlowStepView; said: string; onAgain: () => void }) {
  return (
    <>
      <p role="status">{said}</p>
      {flow.nextRun !== null && (
        <section aria-label="Repeats" className="stack">
          <p>{flow.repeatability}</p>
          <div>
            <Button onClick={onAgain}>Run it again</Button>
          </div>
        </section>
      )}
    </>
  )
}
