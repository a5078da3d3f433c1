import 'server-only'
import type { FindingLine } from './findings'

/** One finding in a list: what was seen, and how far the question is. No price: that is not everybody's to see. */
export type FindingRow = {
  readonly id: string
  readonly what: string
  readonly tag: string
  readonly headId: string
  readonly jobNumber: string
  readonly reportedAt: Date
  readonly askedAt: Date | null
  readonly how: string
  readonly said: {
    readonly answer: 'yes' | 'no'
    readonly at: Date
    readonly by: string
    readonly onLink: boolean
  } | null
}

type Worn = { readonly tag: string; readonly headId: string; readonly jobNumber: string }

export const findingRow = (finding: FindingLine, worn: Worn): FindingRow => ({
  ...worn,
  id: finding.id,
  what: finding.what,
  reportedAt: finding.reportedAt,
  askedAt: finding.askedAt,
  how: finding.askedHow,
  said:
    finding.answer === null
      ? null
      : {
          answer: finding.answer as 'yes' | 'no',
          at: finding.answeredAt ?? finding.reportedAt,
          by: finding.answeredBy,
          onLink: finding.answeredLinkId !== null,
        },
})
