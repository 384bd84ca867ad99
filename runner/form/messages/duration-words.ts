import type { Messages } from "./messages.tsx";

const PARTS = { Y: "years", M: "months", W: "weeks", D: "days" } as const;

/** "P1Y6M" is "1 year 6 months"; "at-once" is "at once". */
export function durationWords(t: Messages["t"], duration: string): string {
  if (duration === "at-once") return t("duration.at-once");
  return [...duration.matchAll(/(\d+)([YMWD])/g)]
    .map(([, count, unit]) =>
      t(`duration.${PARTS[unit as keyof typeof PARTS]}`, { count: Number(count) }),
    )
    .join(" ");
}
