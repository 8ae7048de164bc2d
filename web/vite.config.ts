import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vitest/config";

export default defineConfig({
  base: "./",
  plugins: [svelte()],
  build: { target: "es2022", modulePreload: { polyfill: false }, assetsInlineLimit: 0, cssCodeSplit: false },
  test: { include: ["src/**/*.test.ts"] },
});
