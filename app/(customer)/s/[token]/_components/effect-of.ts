type Asked = { readonly price: string | null; readonly free: boolean; readonly adds: readonly string[] }

/** What an answer does, for somebody who does not know the shop. */
export function effectOf(answer: 'yes' | 'no', { price, free, adds }: Asked): string {
  if (answer === 'no') {
    return 'We will not do this work. We will do the rest. Your spec sheet will say that you declined it. Nothing is added to your bill.'
  }
  const work = adds.length === 0 ? 'We do it.' : `We do it. Work added: ${adds.join(', ')}.`
  if (price === null) return work
  return free ? `${work} It costs you nothing more.` : `${work} ${price} is added to your bill.`
}
