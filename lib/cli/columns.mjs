const model = /^model (\w+) \{\n([\s\S]*?)^\}/gm
const field = /^ {2}(\w+)\s+(String|Int|Float|Boolean|DateTime)\??(?=\s|$)/gm

/** The columns of every table with their kinds, read from the model file: what `lib/data/tables.ts` reads rows by. */
export function columnsModule(schema) {
  const tables = [...schema.matchAll(model)].map(([, name, body]) => {
    const columns = [...body.matchAll(field)].map(([, column, kind]) => `    ${column}: '${kind}',\n`)
    return `  ${name}: {\n${columns.join('')}  },\n`
  })
  return `export const columns = {\n${tables.join('')}} as const\n`
}
