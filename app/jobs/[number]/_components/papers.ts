export const paper = (kind: 'job-sheet' | 'tag-labels', number: string): string =>
  `/api/papers/${kind}/${number}`
