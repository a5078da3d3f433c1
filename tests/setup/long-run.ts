/** `npm run test:long`: what `npm test` tries a few times, tried often. */
export const inLongRun = process.env.BRASSTAG_LONG_TESTS === '1'
