import { namesAll, type PickAsked } from '@/lib/core/find/pick'
import { pageOfRows, type Paged } from './paging'

/** Names are compared in the program, so that small and capital letters are alike on every database: of these many. */
const mostCompared = 2000

export const idsAsked = (asked: PickAsked) => ('ids' in asked ? { id: { in: [...asked.ids] } } : {})

/** Without words the lines of one page and one more, which says that there are others. */
export const mostRead = (asked: PickAsked, size: number): number =>
  'words' in asked && asked.words.length > 0 ? mostCompared : size + 1

/** Of what was read the lines whose names hold the words, at most `size`. */
export const picksOf = <Row>(
  rows: readonly Row[],
  asked: PickAsked,
  size: number,
  nameOf: (row: Row) => string,
): Paged<Row> => pageOfRows('words' in asked ? rows.filter((row) => namesAll(nameOf(row), asked.words)) : rows, size)
