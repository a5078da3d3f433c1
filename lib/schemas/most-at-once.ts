/** So many deeds are sent at once at the most. */
export const mostAtOnce = 50
