import { defineConfig } from '@playwright/test';

/** Two phones in one Chromium against the real server. */
export default defineConfig({
  testDir: 'e2e',
  testMatch: '**/*.spec.ts',
  outputDir: '../.build/faces-output',
  timeout: 60_000,
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  reporter: process.env.PLAYWRIGHT_JSON_OUTPUT_NAME ? [['list'], ['json']] : [['list']],
  use: {
    launchOptions: {
      // Set by tests/run.mjs, which has looked for one; without it Playwright takes its own.
      ...(process.env.HUSHMARK_CHROMIUM ? { executablePath: process.env.HUSHMARK_CHROMIUM } : {}),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});
