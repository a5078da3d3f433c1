'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { CutChoice } from '@/app/_components/cut/cut-choice'
import { PlanPreview } from '@/app/_components/cut/plan-preview'
import { DraftNotice } from '@/app/_components/form/draft-notice'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { useDraft } from '@/app/_components/form/use-draft'
import { TextInput } from '@/app/_components/ui/text-input'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { planChoiceSchema } from '@/lib/schemas/plan'
import type { PlanContext } from '@/lib/use-cases/plans/see-plan'
import type { WhereNeeded } from '@/lib/use-cases/plans/where-needed'
import { makePlanVersionAction } from './actions'

type Props = {
  context: PlanContext
  whereNeeded: WhereNeeded
  seenVersion: number
  before: PlanRecord | null
}

/** A flat-deck head without a wanted thickness is cleaned up. */
function firstKind({ flatDeck, targetCc }: PlanContext): PlanRecord['kind'] {
  if (flatDeck) return flatDeck.wantedThicknessIn === null ? 'clean-up' : 'flat'
  return targetCc === null ? 'none' : 'flat'
}

const keptThickness = (before: PlanRecord | null): string | null => {
  const wantedIn = before?.flatDeck?.wantedThicknessIn ?? null
  return wantedIn === null ? null : String(wantedIn)
}

/** Chooses the cut; what it does is worked out as one types, and once more where it is kept. */
export function PlanForm({ context, whereNeeded, seenVersion, before }: Props) {
  const form = useActionForm(planChoiceSchema, makePlanVersionAction, {
    defaultValues: {
      pairId: context.pairId,
      seenVersion,
      kind: before?.kind ?? firstKind(context),
      splitBy: 'margin',
      flatIn: '',
      angleIn: '',
      angleDeg: '',
      stopAtIn: before?.kind === 'clean-up' ? String(before.flatIn) : '',
      sinkIn: '',
      thicknessIn: keptThickness(before) ?? context.wantedThicknessText,
      reason: '',
    },
  })
  const draft = useDraft(`plan ${context.pairId} ${seenVersion}`, form)
  const watched = form.form.watch()
  const typed = { ...watched, thicknessIn: watched.thicknessIn ?? '' }
  return (
    <section className="stack part" aria-labelledby="new-plan">
      <h2 id="new-plan">New calculation, not kept</h2>
      <DraftNotice draft={draft} />
      <ActionForm form={form} submitLabel={seenVersion === 0 ? 'Keep this plan' : `Keep as version ${seenVersion + 1}`}>
        <CutChoice text={form.text} typed={typed} marginCc={context.marginCc} flatDeck={context.flatDeck !== null} />
        <PlanPreview ground={context} typed={typed} whereNeeded={whereNeeded} notKept />
        {seenVersion > 0 && <TextInput label="Why the plan is changed" required {...form.text('reason')} />}
      </ActionForm>
    </section>
  )
}
