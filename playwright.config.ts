import { defineConfig } from '@playwright/test'
import { systemChromium } from './lib/cli/browser.mjs'

const touch = { hasTouch: true, isMobile: true }

export default defineConfig({
  testDir: 'e2e',
  globalSetup: './e2e/start-demo.ts',
  outputDir: 'test-results',
  // One server on two cores: more browsers than that only wait for each other.
  workers: 2,
  fullyParallel: false,
  retries: 0,
  forbidOnly: true,
  // A whole journey on a busy machine: what hangs is found by the waits for what is expected, not by this. And those wait
  // longer than a machine at a third of the usual speed takes for a page.
  timeout: 180_000,
  expect: { timeout: 30_000 },
  reporter: 'list',
  use: {
    baseURL: process.env.BRASSTAG_E2E_URL,
    // A worker answers in the place of the network, where a test has its hands on it; one spec allows it.
    serviceWorkers: 'block',
    locale: 'en-US',
    timezoneId: 'America/Denver',
    trace: 'off',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: systemChromium(),
      // Root in a container has no sandbox to give; the rest keeps the browser from calling anywhere by itself.
      args: [
        ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
        ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
      ],
    },
  },
  // Every spec runs at the desk; `*.views.spec.ts` on the phone as well, and there first: what comes last should be short,
  // or one of the two browsers waits for the other. The desk's pages are measured at the tablet's width too.
  projects: [
    {
      name: 'phone',
      testMatch: '**/*.views.spec.ts',
      use: { viewport: { width: 390, height: 844 }, ...touch },
    },
    { name: 'desk', use: { viewport: { width: 1280, height: 800 } } },
  ],
})
