const prefix = 'brasstag '

/** Storage may be full or forbidden by the browser; a draft is a courtesy, and its loss must not stop the work. */
function attempt<T>(work: () => T): T | null {
  try {
    return work()
  } catch {
    return null
  }
}

export const saveDraft = (key: string, text: string): void => {
  attempt(() => localStorage.setItem(prefix + key, text))
}

export const loadDraft = (key: string): string | null => attempt(() => localStorage.getItem(prefix + key))

export const clearDraft = (key: string): void => {
  attempt(() => localStorage.removeItem(prefix + key))
}

/** On sign-out: what one person typed is not the next one's to see. */
export const forgetAll = (): void => {
  attempt(() => {
    const keys = Object.keys(localStorage).filter((key) => key.startsWith(prefix))
    keys.forEach((key) => localStorage.removeItem(key))
  })
}
