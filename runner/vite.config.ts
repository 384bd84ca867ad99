import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { serviceWorker } from "./vite-sw.ts";

export default defineConfig({
  base: "/",
  plugins: [react(), serviceWorker()],
  build: {
    manifest: true,
    target: "es2022",
    // Nothing inline: the page is served under script-src 'self'.
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
  },
});
