import { defineConfig } from "vitest/config";

const setupFiles = ["./tests/setup/no-console-error.ts"];
const beside = (name: string) => [`${name}/**/*.test.ts`, `${name}/**/*.test.tsx`];
const exclude = ["**/node_modules/**", "**/dist/**", "**/.cache/**"];

const unit = (name: string, environment: "node" | "happy-dom") => ({
  // Property tests share two busy cores: how long one takes says nothing.
  test: { name, environment, include: beside(name), exclude, setupFiles, testTimeout: 60_000 },
});

export default defineConfig({
  test: {
    maxWorkers: 2,
    projects: [
      unit("schemas", "node"),
      unit("server", "node"),
      unit("runner", "happy-dom"),
      unit("designer", "happy-dom"),
      {
        test: {
          name: "tests",
          include: beside("tests"),
          exclude: [...exclude, "tests/journeys/**"],
          setupFiles,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        // One browser at a time, after everything that is quick to fail.
        test: {
          name: "journeys",
          include: beside("tests/journeys"),
          exclude,
          setupFiles,
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
