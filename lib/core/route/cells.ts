/** ● always · ○ if ordered · ◐ when its condition holds · – not. */
export type Cell = '●' | '○' | '◐' | '–'

/** No cut, clean-up, flat to size, angle (with or without flat). */
export const columns = ['none', 'cleanUp', 'flat', 'angle'] as const
export type Column = (typeof columns)[number]

/** One cell a column. */
export type Cells = readonly [Cell, Cell, Cell, Cell]
