import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import ts from 'typescript'
import { corePath } from '../exported'

export type Documented = {
  readonly name: string
  /** From lib/core. */
  readonly file: string
  /** Without the stars, one line; '' when there is none. */
  readonly comment: string
  /** What it returns, as its source says. */
  readonly returns: string
}

/** Folders whose functions work something out. */
export const computing = [
  'units',
  'chamber',
  'cut',
  'rate',
  'at-mill',
  'at-bench',
  'clearance',
  'seat',
  'head-now',
  'intake',
  'compression',
  'straightness',
  'flow',
  'flow/import',
  'expected',
  'springs',
  'flat-deck',
  'wanted',
  'valve-sheet',
  'options',
  'finish',
] as const

export const listed = ['.', ...computing, 'money'] as const

const commentOf = (text: string, node: ts.Node): string => {
  const range = ts.getLeadingCommentRanges(text, node.getFullStart())?.at(-1)
  const raw = range ? text.slice(range.pos, range.end) : ''
  return raw.startsWith('/**')
    ? raw
        .replace(/^\/\*\*|\*\/$/g, '')
        .replace(/\s*\n\s*\* ?/g, ' ')
        .trim()
    : ''
}

const isExported = (node: ts.Statement): boolean =>
  ts.canHaveModifiers(node) && (ts.getModifiers(node) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)

function functionsIn(file: string): Documented[] {
  const text = readFileSync(corePath(file), 'utf8')
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true)
  return source.statements.filter(isExported).flatMap((node): Documented[] => {
    const comment = commentOf(text, node)
    if (ts.isFunctionDeclaration(node) && node.name)
      return [{ name: node.name.text, file, comment, returns: node.type?.getText() ?? '' }]
    if (!ts.isVariableStatement(node)) return []
    return node.declarationList.declarations.flatMap(({ name, initializer }) =>
      initializer && ts.isArrowFunction(initializer)
        ? [{ name: name.getText(), file, comment, returns: initializer.type?.getText() ?? '' }]
        : [],
    )
  })
}

/** Every function that the files of a folder of the core give to others, in the order of files and lines. */
export const functionsOf = (folder: string): readonly Documented[] =>
  readdirSync(corePath(folder))
    .filter((file) => file.endsWith('.ts'))
    .sort()
    .flatMap((file) => functionsIn(join(folder, file)))
