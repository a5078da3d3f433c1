import type { RulesFault } from '../core/route/codes'
import { columns } from '../core/route/cells'
import { cellWords, columnNames } from '../core/route/rules-words'
import { listed, lower } from '../core/route/words'

type OfStep = Exclude<Extract<RulesFault, { readonly label: string }>['code'], 'under-floor'>

const ofStep: Readonly<Record<OfStep, (label: string) => string>> = {
  'cells-fixed': (label) => `${label}: the shop cannot change when this step is needed.`,
  'not-conditional': (label) => `${label} cannot be conditional.`,
  'no-condition': (label) => `${label}: choose a condition.`,
  'no-column': (label) => `${label}: mark at least one column as conditional.`,
  'no-limit': (label) => `${label}: enter the limit.`,
  'after-the-last': (label) => `${label}: choose a place before the final inspection.`,
  'waits-for-unknown': (label) => `${label} names a step that does not exist.`,
  'waits-for-itself': (label) => `${label} cannot wait for itself.`,
  'waits-for-the-last': (label) => `${label} cannot wait for the last steps.`,
}

/** What is wrong with a shop's tables of steps, and what to do. */
export function rulesFaultText(fault: RulesFault): string {
  switch (fault.code) {
    case 'step-not-found':
      return 'Step not found. Reload the page.'
    case 'added-twice':
      return 'A step was added twice.'
    case 'no-name':
      return `Give every ${fault.what} a name.`
    case 'name-twice':
      return `Two ${fault.what}s have the name “${fault.name}”.`
    case 'name-too-long':
      return `“${fault.name}” is too long: ${fault.mostLetters} letters at most.`
    case 'under-floor': {
      const cut = columnNames[columns.indexOf(fault.column)]
      const least = cellWords[fault.floor]
      return `${fault.label}: for ${cut} it cannot be asked for less often than “${least}”. A head is not safe without it.`
    }
    case 'circle':
      return `These steps would wait for each other: ${listed(fault.labels.map(lower))}.`
    case 'endless': {
      const steps = listed(fault.labels.map(lower))
      return `A head with ${fault.head} would never be finished: ${steps} would repeat endlessly.`
    }
    default:
      return ofStep[fault.code](fault.label)
  }
}
