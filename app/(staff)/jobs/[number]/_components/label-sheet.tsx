import { LabelForm } from '@/app/_components/papers/label-form'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Check } from '@/app/_components/ui/check'
import { FieldGroup } from '@/app/_components/ui/field'
import { paper } from './papers'

/** Labels of some of the job's heads, or on a sheet of paper. */
export function LabelSheet({ number, tags }: { number: string; tags: readonly string[] }) {
  return (
    <details>
      <summary>Labels on a sheet of paper</summary>
      <div className="stack">
        <LabelForm action={paper('tag-labels', number)}>
          <FieldGroup id="label-tags" label="For which heads">
            {tags.map((tag) => (
              <Check key={tag} name="tag" value={tag} label={tag} defaultChecked />
            ))}
          </FieldGroup>
        </LabelForm>
        <div>
          <ButtonLink href="/counter/labels" variant="quiet">
            With heads of other jobs
          </ButtonLink>
        </div>
      </div>
    </details>
  )
}
