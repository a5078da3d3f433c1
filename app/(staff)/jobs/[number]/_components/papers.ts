export const paper = (kind: 'job-sheet' | 'tag-labels' | 'receipt', number: string): string =>
  `/api/papers/${kind}/${encodeURIComponent(number)}`
