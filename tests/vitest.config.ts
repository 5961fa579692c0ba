import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  resolve: {
    alias: { 'server-only': fileURLToPath(new URL('./support/server-only.ts', import.meta.url)) },
  },
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    setupFiles: ['tests/support/chance.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
