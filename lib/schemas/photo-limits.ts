// Apart from the schema: the tablet shrinks a picture without loading what checks a form.

/** Longest edge of a kept picture, and of the small one that stands in lists. */
export const longestEdgePx = 2000
export const smallEdgePx = 480

/** What may come up: the tablet shrinks a picture first; one that its browser cannot read comes as it is. */
export const mostUploadBytes = 8 * 1024 * 1024
