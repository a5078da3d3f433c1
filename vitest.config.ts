import { join } from 'node:path'
import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

/** What takes longest goes first, or one of two workers waits for it at the end. Others by size, as is usual. */
const longest = [
  ...['data/killed.test.ts', 'data/prepare.test.ts', 'pdf/every-paper.test.ts'],
  ...['core/rate/simulation.test.ts', 'core/route/random-histories.test.ts', 'core/no-nan.test.ts'],
]

const resolve = {
  alias: {
    '@': import.meta.dirname,
    // Outside a bundler the real module throws on import.
    'server-only': join(import.meta.dirname, 'node_modules/server-only/empty.js'),
  },
}

const common = {
  setupFiles: ['tests/setup/console.ts', 'tests/setup/random.ts', 'tests/setup/end-of-file.ts'],
  // Native modules and one client per process: processes, not threads.
  pool: 'forks' as const,
  testTimeout: 60_000,
  hookTimeout: 120_000,
}

/**
 * Tests that share a process, in which everything is loaded once: those of what keeps no state, and those that each open
 * a database of their own. Whatever puts another module in the place of one of ours stays alone.
 */
const shared = {
  pure: ['app', 'core', 'drawing', 'schemas', 'words'].map((room) => `tests/${room}/**/*.test.{ts,tsx}`),
  shop: [
    'tests/data/*.test.ts',
    ...['demo', 'dossier', 'pdf', 'use-cases'].map((room) => `tests/${room}/**/*.test.ts`),
  ],
}

/** A process is handed on only to the next file of the same project, so they come one project after the other. */
const projects = ['alone', 'shop', 'pure']

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId, project }: TestSpecification): number => {
      const at = longest.findIndex((name) => moduleId.endsWith(`tests/${name}`))
      return projects.indexOf(project.name) * 100 + (at === -1 ? longest.length : at)
    }
    return (await super.sort(files)).toSorted((a, b) => rank(a) - rank(b))
  }
}

export default defineConfig({
  resolve,
  test: {
    // Two, as the machine has cores.
    maxWorkers: 2,
    globalSetup: 'tests/setup/global.ts',
    sequence: { sequencer: LongestFirst },
    projects: [
      { resolve, test: { name: 'pure', include: shared.pure, isolate: false, ...common } },
      { resolve, test: { name: 'shop', include: shared.shop, isolate: false, ...common } },
      {
        resolve,
        test: {
          name: 'alone',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: [...shared.pure, ...shared.shop],
          ...common,
        },
      },
    ],
  },
})
