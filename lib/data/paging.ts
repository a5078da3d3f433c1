/** Lines of a list on one page. */
export const pageSize = 100

export type Paged<Row> = {
  readonly rows: readonly Row[]
  /** Whether another page follows. */
  readonly more: boolean
}
