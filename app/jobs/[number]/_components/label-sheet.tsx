import { Button } from '@/app/_components/ui/button'
import { Check } from '@/app/_components/ui/check'
import { FieldGroup } from '@/app/_components/ui/field'
import { TextInput } from '@/app/_components/ui/text-input'
import { labelsOnSheet } from '@/lib/pdf/tag-label'
import { paper } from './papers'

/** Labels on a sheet of paper, from its first free place on: a plain form, so that it works without scripts. */
export function LabelSheet({ number, tags }: { number: string; tags: readonly string[] }) {
  return (
    <details>
      <summary>Labels on a sheet of paper</summary>
      <form action={paper('tag-labels', number)} method="get" target="_blank" className="stack">
        <FieldGroup id="label-tags" label="For which heads">
          {tags.map((tag) => (
            <Check key={tag} name="tag" value={tag} label={tag} defaultChecked />
          ))}
        </FieldGroup>
        <TextInput
          name="first"
          label="First free label on the sheet"
          hint={`1 to ${labelsOnSheet}, row by row from the top left.`}
          inputMode="numeric"
          pattern="[0-9]{1,2}"
          defaultValue="1"
          required
        />
        <Button type="submit">Print the sheet</Button>
      </form>
    </details>
  )
}
