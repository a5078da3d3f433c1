export type TagLabelData = {
  readonly language: string
  readonly tag: string
  readonly qrText: string
  readonly shopName: string
  readonly jobNumber: string
  readonly casting: string
  /** Side or marked end; '' when not said. */
  readonly side: string
}
