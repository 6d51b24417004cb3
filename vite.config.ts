import react from '@vitejs/plugin-react'
import { defineConfig } from 'vitest/config'
import { siteWorkerFile } from './src/cli/build/siteWorkerFile.ts'

/** Vite and Vitest in one file. `base: './'` lets the built app be served from any folder. */
export default defineConfig({
  base: './',
  plugins: [react(), siteWorkerFile(() => new Date().toISOString().slice(0, 10))],
  // Nothing is written into other files: the content policy lets fonts and pictures come as files of the site alone.
  build: { target: 'es2022', chunkSizeWarningLimit: 700, assetsInlineLimit: 0 },
  test: {
    environment: 'node',
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/support/seed.ts'],
    // Property tests run long on a slow or busy machine; slowness is no failure here.
    testTimeout: 400_000,
    // One for each core: the default leaves one idle, which on two is half.
    maxWorkers: '100%',
    reporters: ['default'],
  },
})
