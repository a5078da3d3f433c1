const ofFiles = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'Referrer-Policy', value: 'no-referrer' },
  { key: 'Content-Security-Policy', value: "base-uri 'none'; frame-ancestors 'none'" },
]

/** @type {import('next').NextConfig} */
const config = {
  poweredByHeader: false,
  reactStrictMode: true,
  // `npm test` has a stage of its own for types; a start need not wait for it again.
  typescript: { ignoreBuildErrors: true },
  // `forbidden()` answers 403 with app/forbidden.tsx.
  experimental: { authInterrupts: true, preloadEntriesOnStart: false },
  devIndicators: false,
  // What the proxy is not asked about: files of the build, the same for everybody.
  headers: async () =>
    ['/_next/static/:path*', '/icon(.*)', '/favicon.ico'].map((source) => ({ source, headers: ofFiles })),
  // Native or self-locating packages: bundling them breaks the paths they load their own files by.
  serverExternalPackages: [
    'better-sqlite3',
    '@prisma/adapter-better-sqlite3',
    '@prisma/adapter-pg',
    '@prisma/driver-adapter-utils',
    'pg',
    '@node-rs/argon2',
    'pdf-lib',
    '@pdf-lib/fontkit',
    'nodemailer',
  ],
  // A lock file in a folder above would otherwise be taken for the root of the project.
  turbopack: { root: import.meta.dirname },
  outputFileTracingRoot: import.meta.dirname,
  // Read from disk at run time by the papers and the start-up, so the tracer cannot see them.
  outputFileTracingIncludes: {
    '/**': ['./node_modules/@expo-google-fonts/*/*/*.ttf', './prisma/*/migrations/**', './prisma/*.sql'],
  },
  outputFileTracingExcludes: { '/**': ['./data/**', './data-shop/**', './e2e/**', './tests/**'] },
}

export default config
