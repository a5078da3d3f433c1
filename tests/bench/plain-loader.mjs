import { existsSync, readFileSync } from 'node:fs'
import { register } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import ts from 'typescript'

/**
 * TypeScript with its types taken off and nothing added. The loader that the other scripts run under wraps every function
 * to keep its name, which the app's own build does not do, and which costs the core a third of its speed.
 */
const root = join(import.meta.dirname, '..', '..')

export async function resolve(specifier, context, next) {
  const base = specifier.startsWith('@/')
    ? join(root, specifier.slice(2))
    : specifier.startsWith('.') && context.parentURL
      ? join(dirname(fileURLToPath(context.parentURL)), specifier)
      : null
  if (base && existsSync(`${base}.ts`)) return { url: pathToFileURL(`${base}.ts`).href, shortCircuit: true }
  return next(specifier, context)
}

export async function load(url, context, next) {
  if (!url.endsWith('.ts')) return next(url, context)
  const { outputText } = ts.transpileModule(readFileSync(fileURLToPath(url), 'utf8'), {
    compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 },
  })
  return { format: 'module', source: outputText, shortCircuit: true }
}

// Loaded a second time, as the hooks themselves, it must not register again.
if (!process.env.BRASSTAG_PLAIN_LOADER) {
  process.env.BRASSTAG_PLAIN_LOADER = '1'
  register(import.meta.url)
}
