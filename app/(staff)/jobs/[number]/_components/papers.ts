/** The address of a job's paper, by its folder under `app/api/papers`. */
export const paper = (kind: string, number: string): string => `/api/papers/${kind}/${encodeURIComponent(number)}`
