/** Databases that the test file at hand has opened, each with what closes it. */
export const openDatabases = new Set<() => Promise<void>>()
