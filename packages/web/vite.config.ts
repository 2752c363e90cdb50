import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  plugins: [react()],
  build: {
    // The policy of the server allows no data: address, so nothing is inlined.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 350,
  },
  server: { proxy: { '/api': 'http://127.0.0.1:8480' } },
});
