import type { ServerAction } from '@/app/_components/form/call-action'
import { ActionButton } from './action-button'

type Props<Key extends string, Value> = {
  /** "person", "vendor". */
  what: string
  /** As it is on the page; the action takes its id by this name. */
  entry: { readonly id: string; readonly version: number; readonly retired: boolean }
  idAs: Key
  action: ServerAction<Record<Key, string> & { version: number; retired: boolean }, Value>
  /** What retiring does, and what restoring does; a sentence each. */
  retire: string
  restore: string
}

/** Takes an entry off the lists, or puts it back. */
export function RetirePart<Key extends string, Value>(props: Props<Key, Value>) {
  const { what, entry, idAs, action, retire, restore } = props
  const { id, version, retired } = entry
  const input = { [idAs]: id, version, retired: !retired } as Record<Key, string> & {
    version: number
    retired: boolean
  }
  return (
    <section className="part" aria-labelledby="retire">
      <h2 id="retire">{retired ? 'Retired' : 'Retire'}</h2>
      <p>{retired ? restore : retire}</p>
      <ActionButton action={action} input={input} variant={retired ? 'plain' : 'stop'}>
        {retired ? `Restore this ${what}` : `Retire this ${what}`}
      </ActionButton>
    </section>
  )
}
