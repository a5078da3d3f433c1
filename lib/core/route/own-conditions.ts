/** Conditions that a step added by the shop can hang on. Those with a figure are held against the step's own limit. */
export const ownConditions = {
  'used-head': { label: 'a used head', hasLimit: false },
  overheated: { label: 'it was overheated', hasLimit: false },
  'came-assembled': { label: 'it came assembled', hasLimit: false },
  'target-given': { label: 'a target was given', hasLimit: false },
  'cam-in-head': { label: 'the cam is in the head', hasLimit: false },
  'one-manifold': { label: 'one manifold spans two heads', hasLimit: false },
  'cut-deeper': { label: 'more is cut on this visit than', hasLimit: true },
  'gone-more': { label: 'more is removed since new than', hasLimit: true },
  'after-seat-work': { label: 'after seat work', hasLimit: false },
  'after-chamber-work': { label: 'after port or chamber work', hasLimit: false },
  'after-repair': { label: 'after weld, insert or guide work', hasLimit: false },
} as const satisfies Readonly<Record<string, { label: string; hasLimit: boolean }>>

export type OwnCondition = keyof typeof ownConditions
export const ownConditionIds = Object.keys(ownConditions) as readonly OwnCondition[]

/** Why the step is on the route, in words: "more is cut on this visit than 0.020 in". */
export const ownConditionWords = (condition: OwnCondition, limitIn: number | null): string =>
  limitIn === null ? ownConditions[condition].label : `${ownConditions[condition].label} ${limitIn.toFixed(3)} in`
