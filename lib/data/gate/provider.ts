export type Provider = 'sqlite' | 'postgresql'

export const providerOf = (url: string): Provider => (/^postgres(ql)?:/.test(url) ? 'postgresql' : 'sqlite')

/** The path of a `file:` address. */
export const filePathOf = (url: string): string => url.replace(/^file:/, '')
