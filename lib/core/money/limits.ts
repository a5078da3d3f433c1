/** The largest amount that the books hold, in minor units: the databases keep whole numbers of 32 bits. */
export const mostMinor = 2_000_000_000

/** The largest quantity of one line, in thousandths: 9,999 pieces or hours. */
export const mostThousandths = 9_999_000
