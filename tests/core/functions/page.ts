import { basename } from 'node:path'
import { format, resolveConfig } from 'prettier'
import { corePath } from '../exported'
import { functionsOf, listed, type Documented } from './documented'

export const pagePath = corePath('FUNCTIONS.md')

/** As far as the first full stop that ends a sentence, or the colon before a formula's list. */
export const firstSentence = (comment: string): string => {
  const plain = comment.split(/\s@param|\s@returns|\s{2,}/)[0] ?? ''
  return (/^.*?[.:;](?=\s|$)/.exec(plain)?.[0] ?? plain).replace(/[.:;]$/, '')
}

const line = ({ name, file, comment }: Documented): string =>
  `- \`${name}\` (\`${basename(file)}\`): ${firstSentence(comment)}`

/** The whole page, as the project's formatter leaves it. */
export async function functionsPage(): Promise<string> {
  const folders = listed.map((folder) => [folder, functionsOf(folder)] as const)
  const page = [
    '# Functions of the core',
    '',
    'Made from the doc comments by `npm run functions`. Units, ranges, formula, source and example stand with the function.',
    'What a function cannot compute it refuses (`Result` of `errors.ts`): it never throws and never answers NaN. `CHECKS.md`',
    'holds its figures beside figures from outside.',
    ...folders.flatMap(([folder, functions]) => [
      '',
      `## ${folder === '.' ? 'lib/core' : folder}`,
      '',
      ...functions.map(line),
    ]),
    '',
  ].join('\n')
  return format(page, { ...(await resolveConfig(pagePath)), parser: 'markdown' })
}
