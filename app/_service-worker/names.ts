/** The page that stands for every address of the station app, and where it is kept. */
export const shellAddress = '/stations'
export const shellCache = 'brasstag-shell'
/** What a page tells the worker once somebody is signed in. */
export const keepShell = 'keep the shell'
