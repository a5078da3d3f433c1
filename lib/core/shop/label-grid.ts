/** Tag labels on a sheet of paper, cut apart by hand: so many abreast, so many rows. */
export const labelColumns = 3
export const labelRows = 9
export const labelsOnSheet = labelColumns * labelRows
