import { join } from 'node:path'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  resolve: {
    alias: {
      '@': import.meta.dirname,
      // Outside a bundler the real module throws on import.
      'server-only': join(import.meta.dirname, 'node_modules/server-only/empty.js'),
    },
  },
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    globalSetup: 'tests/setup/global.ts',
    setupFiles: ['tests/setup/console.ts'],
    // Native modules and one client per process: processes, not threads. Two, as the machine has cores.
    pool: 'forks',
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
})
