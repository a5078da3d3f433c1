import { formatMoney } from '@/lib/core/money/format-money'
import type { MoneyFacts, PaperLine } from '@/lib/core/money/paper-facts'
import { taxWords } from '@/lib/core/money/percent'
import { lineWords } from '@/lib/core/money/price-of'
import { quantityText } from '@/lib/core/money/quantity'
import { dateWords } from '@/lib/core/shop/when-words'
import type { MoneyPaperData } from '@/lib/pdf/money-paper-data'
import { balanceLabel, hasAmount, howPaidWords, moneyPaperWords } from '@/lib/words/money'

/** The frozen facts of a paper as it prints them. */
export function moneyPaperData(facts: MoneyFacts): MoneyPaperData {
  const money = (minor: number): string => formatMoney(minor, facts.currency, facts.locale)
  const { customer } = facts
  return {
    language: facts.locale,
    shop: facts.shop,
    title: `${moneyPaperWords[facts.kind]} ${facts.number}`,
    block: [
      ['Date', dateWords(new Date(facts.at), facts)],
      ['Job', facts.jobNumber],
      ['For', [customer.name, ...customer.address.split('\n')].filter(Boolean).join(', ')],
      ['Engine', facts.engine],
      ['Heads', facts.heads.join(', ')],
      ['Invoice', facts.of],
    ].filter((entry): entry is [string, string] => entry[1] !== ''),
    lead: leadOf(facts, money),
    lines: facts.lines.map((line) => lineText(line, facts.kind, money)),
    sums: sumsOf(facts, money),
  }
}

type Money = (minor: number) => string

function leadOf({ payment, reason }: MoneyFacts, money: Money): string {
  if (payment === null) return reason === '' ? '' : `Reason: ${reason}`
  const { kind, minor, method, how, takenBy } = payment
  const what = { deposit: 'Deposit received', payment: 'Payment received', refund: 'Paid back' }[kind]
  return `${what}: ${money(minor)} (${howPaidWords(method, how)})${takenBy === '' ? '' : `, by ${takenBy}`}.`
}

function lineText(line: PaperLine, kind: MoneyFacts['kind'], money: Money): MoneyPaperData['lines'][number] {
  const isCredit = kind === 'credit-note'
  return {
    text: lineWords(line),
    quantity: isCredit ? '' : quantityText(line.quantityThousandths),
    each: isCredit ? '' : money(line.unitMinor),
    tax: line.taxMillionths === 0 && line.taxName === '' ? 'none' : taxWords(line.taxName, line.taxMillionths),
    amount: money(line.netMinor),
  }
}

function sumsOf(facts: MoneyFacts, money: Money): MoneyPaperData['sums'] {
  const sum = (label: string, minor: number, strong = false) => ({ label, amount: money(minor), strong })
  const { netMinor, taxes, totalMinor, paidMinor, balance, kind } = facts
  const charged = [
    sum('Net', netMinor),
    ...taxes.map((rate) => {
      const name =
        rate.name === '' ? `Tax, ${taxWords('', rate.rateMillionths)}` : taxWords(rate.name, rate.rateMillionths)
      return sum(`${name}, on ${money(rate.netMinor)}`, rate.taxMinor)
    }),
    sum(kind === 'credit-note' ? 'Total credited' : 'Total', totalMinor, true),
  ]
  if (kind === 'credit-note') return charged
  const left = { label: balanceLabel(balance, 'customer'), amount: money(balance.minor), strong: true }
  const jobMinor = paidMinor + (balance.code === 'to-refund' ? -balance.minor : balance.minor)
  return [
    ...charged,
    // Another invoice of the job, or a credit note: what was paid and what is left are of all of them.
    ...(jobMinor === totalMinor ? [] : [sum(`Job ${facts.jobNumber} in all`, jobMinor)]),
    sum('Paid so far', paidMinor),
    hasAmount(balance) ? left : { ...left, amount: '' },
  ]
}
