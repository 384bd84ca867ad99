import type { Messages } from "../messages/messages.tsx";
import type { FormPoint } from "./sections.ts";

/** A point's question where its section does not say which member it is asked for. */
export const fullTitle = (t: Messages["t"], { member, title }: FormPoint): string =>
  member === null ? title : t("repeat.point", { member, title });
