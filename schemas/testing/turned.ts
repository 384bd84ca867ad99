import type { Checklist } from "../checklist/meta-schema.ts";
import { translatableTexts } from "../checklist/texts.ts";

/** With every text worded in the language "cy": as itself backwards. */
export const turned = (doc: Checklist): Checklist => ({
  ...doc,
  wording: {
    cy: Object.fromEntries(
      translatableTexts(doc).map(({ pointer, text }) => [pointer, [...text].reverse().join("")]),
    ),
  },
});
