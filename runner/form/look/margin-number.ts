/** Space for a number in the left margin of a phone and of a desktop page, in CSS pixels. */
export const phoneMargin = 54;
export const desktopMargin = 74;

/** Besley's figures are at most 0.63 em wide, its capitals and dashes at most 0.8 em. */
function width(text: string, size: number) {
  let ems = 0;
  for (const sign of text) ems += /[0-9]/.test(sign) ? 0.63 : /[\s.,]/.test(sign) ? 0.3 : 0.8;
  return ems * size;
}

/** True when a number printed at `size` px does not fit the margin and so stands above the name. */
export function widerThan(margin: number, text: string, size: number) {
  return width(text, size) > margin;
}
