import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [sveltekit()],
  server: { fs: { allow: ['sheets'] } },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/reference/**'],
        },
      },
      {
        extends: true,
        test: { name: 'reference', include: ['tests/reference/**/*.test.ts'] },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          // One browser, one server: the files share them and run one after the other.
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 120_000,
          // What is awaited comes within a frame or so; on a busy machine it takes seconds.
          expect: { poll: { timeout: 30_000 } },
          globalSetup: ['tests/browser/serve.ts'],
        },
      },
    ],
  },
});
