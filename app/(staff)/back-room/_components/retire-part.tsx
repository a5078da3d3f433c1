import type { ServerAction } from '@/app/_components/form/call-action'
import { ActionButton } from './action-button'

type Props<Input extends { retired: boolean }, Value> = {
  /** "person", "vendor". */
  what: string
  retired: boolean
  action: ServerAction<Input, Value>
  /** The entry and the version that is on the page. */
  entry: Omit<Input, 'retired'>
  /** What retiring does, and what restoring does; a sentence each. */
  retire: string
  restore: string
}

/** Takes an entry off the lists, or puts it back. */
export function RetirePart<Input extends { retired: boolean }, Value>(props: Props<Input, Value>) {
  const { what, retired, action, entry, retire, restore } = props
  return (
    <section className="part" aria-labelledby="retire">
      <h2 id="retire">{retired ? 'Retired' : 'Retire'}</h2>
      <p>{retired ? restore : retire}</p>
      <ActionButton
        action={action}
        input={{ ...entry, retired: !retired } as Input}
        variant={retired ? 'plain' : 'stop'}
      >
        {retired ? `Restore this ${what}` : `Retire this ${what}`}
      </ActionButton>
    </section>
  )
}
