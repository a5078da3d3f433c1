/**
 * Texts that begin with this, as a range: an index answers it on both databases, where LIKE would read every row.
 * U+FFFF is not a character, so no text continues with it.
 */
export const beginsWith = (start: string): { gte: string; lt: string } => ({ gte: start, lt: `${start}\uffff` })
