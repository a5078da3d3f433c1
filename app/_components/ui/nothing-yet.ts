/** In the place of a part that is on its way, so that it takes nothing else off the screen. */
export const nothingYet = () => null
