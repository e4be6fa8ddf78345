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
    // Only ends a test that hangs; what must be quick is measured in tests/speed. A busy computer may take its time.
    testTimeout: 30_000,
  },
});
