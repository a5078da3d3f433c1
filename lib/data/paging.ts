/** Lines of a list on one page. */
export const pageSize = 100

export type Paged<Row> = {
  readonly rows: readonly Row[]
  /** Whether another page follows. */
  readonly more: boolean
}

/** The rows of a page and one more, which says whether another page follows. */
export const rowsOfPage = (page: number, size = pageSize) => ({ skip: (page - 1) * size, take: size + 1 })

/** Of what can be retired: those in use first. */
export const inUseFirst = { retiredAt: { sort: 'asc', nulls: 'first' } } as const

/** What `rowsOfPage` found. */
export const pageOfRows = <Row>(found: readonly Row[], size = pageSize): Paged<Row> => ({
  rows: found.slice(0, size),
  more: found.length > size,
})

/** The same page of something else made of each row. */
export const mapPage = <Row, Made>({ rows, more }: Paged<Row>, make: (row: Row) => Made): Paged<Made> => ({
  rows: rows.map(make),
  more,
})
