import type { CDPSession, Page } from "playwright-core";

export const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
};

/** Milliseconds the page's main thread has been at work. */
export const taskTime = async (session: CDPSession): Promise<number> => {
  const { metrics } = await session.send("Performance.getMetrics");
  return (metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN) * 1000;
};

declare global {
  interface Window {
    /** Milliseconds from each key to the end of the frame that shows it. */
    keyFrames: number[];
  }
}

/** From the time stamp of a key to the first task after the frame it asked for. */
export const watchKeys = (page: Page): Promise<void> =>
  page.evaluate(() => {
    window.keyFrames = [];
    window.addEventListener(
      "keydown",
      ({ timeStamp }) => {
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => window.keyFrames.push(performance.now() - timeStamp);
          port2.postMessage(null);
        });
      },
      { capture: true },
    );
  });
