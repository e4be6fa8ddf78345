import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: [
      'core/**/*.test.ts',
      'db/**/*.test.ts',
      'electron/**/*.test.ts',
      'renderer/**/*.test.{ts,tsx}',
      'tests/**/*.test.ts',
    ],
    exclude: ['**/node_modules/**', 'tests/journeys/**'],
    maxWorkers: 2,
  },
});
