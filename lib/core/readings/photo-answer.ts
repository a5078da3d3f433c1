/** What the check-in's photo says once there is one. It is written with the photo, never by hand. */
export const photoTaken = 'taken'

const start = 'no photo'

/** Why there is none, as it is kept: "no photo: the camera is away". Words that say so already stay as they are. */
export const noPhoto = (why: string): string => (why.trim() === '' || saysNoPhoto(why) ? why : `${start}: ${why}`)

/** Whether an answer says that there is no photo, and why. */
export const saysNoPhoto = (text: string): boolean => new RegExp(`^${start}\\b\\W*\\w`, 'iu').test(text.trim())
