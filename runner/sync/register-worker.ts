import type { DeviceDatabase } from "../offline/database.ts";

const LOOK_EVERY_MS = 60 * 60 * 1000;

/** A waiting version of the app takes over only while no inspection is half filled. */
const activateWhenIdle = async (
  registration: ServiceWorkerRegistration,
  opening: Promise<DeviceDatabase>,
): Promise<void> => {
  const waiting = registration.waiting;
  if (!waiting || !navigator.serviceWorker.controller) return;
  const database = await opening;
  if ((await database.count("drafts")) === 0 && !location.pathname.startsWith("/fill/")) {
    waiting.postMessage("activate");
  }
};

/** Keeps the app itself on the device. Without a service worker it still works with a network. */
export const registerWorker = (opening: Promise<DeviceDatabase>): void => {
  if (!("serviceWorker" in navigator) || !import.meta.env.PROD) return;
  void navigator.serviceWorker
    .register("/sw.js")
    .then((registration) => {
      const idle = () => void activateWhenIdle(registration, opening);
      registration.addEventListener("updatefound", () => {
        registration.installing?.addEventListener("statechange", idle);
      });
      document.addEventListener("visibilitychange", idle);
      setInterval(() => void registration.update().catch(() => undefined), LOOK_EVERY_MS);
      idle();
    })
    .catch(() => undefined);
};
