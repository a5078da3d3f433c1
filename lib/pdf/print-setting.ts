export type PaperSize = 'letter' | 'a4'

/** What belongs to a print and not to the record. */
export type PrintSetting = {
  readonly paper: PaperSize
  /** In the shop's zone and manner: "3 Mar 2026, 14:05". */
  readonly printedAt: string
  /** The same moment, for the file's metadata. */
  readonly now: Date
  /** The picture that the paper's data names as the shop's logo, as it is kept: beside the data, which is compared as text. */
  readonly logo?: Uint8Array
  /** Told once a paper when it has letters that no face has; they print as a mark. */
  readonly onMissing?: (title: string, letters: readonly string[]) => void
}
