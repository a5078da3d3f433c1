import type { Theirs, TheirVerb } from '../core/errors'
import { momentWords, type WhenManner } from '../core/shop/when-words'

const did: Readonly<Record<TheirVerb, string>> = {
  tick: 'ticked this step',
  undo: 'took the tick back',
  read: 'entered readings',
  start: 'started this step',
  waive: 'waived this step',
  change: 'changed this step',
  plan: 'made a new version of the plan',
}

/** "Ada Quill ticked this step" */
export const theirsText = ({ who, verb }: Theirs): string => `${who === '' ? 'Someone' : who} ${did[verb]}`

/** "Ada Quill ticked this step, Mar 3, 2026, 2:05 PM" */
export const theirsAtText = (theirs: Theirs, manner: WhenManner): string =>
  theirs.at === '' ? theirsText(theirs) : `${theirsText(theirs)}, ${momentWords(new Date(theirs.at), manner)}`
