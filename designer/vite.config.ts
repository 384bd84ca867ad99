import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

export default defineConfig({
  base: "/designer/",
  plugins: [react()],
  build: {
    manifest: true,
    target: "es2022",
    // Nothing inline: the page is served under script-src 'self'.
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
  },
});
