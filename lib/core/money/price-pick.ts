/** An item of the list as a price line takes it over: as it would have been typed. */
export type PricePick = {
  readonly id: string
  /** The step that it is for; '': none. */
  readonly stepId: string
  /** What it is chosen by. */
  readonly label: string
  readonly text: string
  readonly unitPrice: string
  readonly tax: string
}
export type PickedFields = Pick<PricePick, 'text' | 'unitPrice' | 'tax'>
export const nothingPicked: PickedFields = { text: '', unitPrice: '', tax: '' }

/** The line with the item's words, amount and tax, but where something was typed that no earlier pick put there. */
export function picked(line: PickedFields, item: PickedFields, earlier: PickedFields): PickedFields {
  const field = (name: keyof PickedFields) =>
    line[name] === '' || line[name] === earlier[name] ? item[name] : line[name]
  return { text: field('text'), unitPrice: field('unitPrice'), tax: field('tax') }
}
