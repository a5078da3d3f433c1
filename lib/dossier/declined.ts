import type { SpecDeclined } from '@/lib/core/spec/spec-sheet'
import type { Dossier } from './dossier'
import { dateWords, type WhenManner } from '@/lib/core/shop/when-words'

/** What the customer said no to, and how. */
export const declinedOf = ({ visit }: Dossier, shop: WhenManner): SpecDeclined[] =>
  visit.findings
    .filter((finding) => finding.answer === 'no')
    .map(({ what, askedHow, answeredBy, answeredAt, answeredLinkId }) => {
      const parts = [
        answeredBy && `by ${answeredBy}`,
        answeredLinkId === null ? askedHow : 'on the link',
        answeredAt ? dateWords(answeredAt, shop) : '',
      ]
      const how = parts.filter((part) => part !== '').join(', ')
      return { what, how: how === '' ? '' : `declined ${how}` }
    })
