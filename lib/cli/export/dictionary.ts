import { readSchema } from '../migration-files'

export type Meaning = {
  readonly table: string
  /** '' for the table itself. */
  readonly column: string
  readonly kind: string
  readonly mayBeEmpty: boolean
  readonly meaning: string
}

const kinds: Readonly<Record<string, string>> = {
  String: 'text',
  Int: 'whole number',
  Float: 'number',
  Boolean: 'yes or no',
  DateTime: 'moment (UTC)',
}

const comment = /^\s*\/\/\/\s?(.*)$/
const modelLine = /^model (\w+) \{/
const columnLine = /^ {2}(\w+)\s+(String|Int|Float|Boolean|DateTime)(\??)(?=\s|$)/

/** What each table and column means, from the comments of the one model file. */
export function dictionaryOf(schema = readSchema('sqlite')): Meaning[] {
  const found: Meaning[] = []
  let said: string[] = []
  let table = ''
  for (const line of schema.split('\n')) {
    const words = comment.exec(line)?.[1]
    if (words !== undefined) {
      said.push(words)
      continue
    }
    const model = modelLine.exec(line)?.[1]
    if (model !== undefined) table = model
    const [, column = '', kind = '', empty] = columnLine.exec(line) ?? []
    const about = { table, meaning: said.join(' ') }
    if (model !== undefined) found.push({ ...about, column: '', kind: 'table', mayBeEmpty: false })
    else if (column !== '') found.push({ ...about, column, kind: kinds[kind] ?? kind, mayBeEmpty: empty === '?' })
    said = []
  }
  return found
}
