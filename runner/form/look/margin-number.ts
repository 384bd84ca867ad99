/** Space for a number in the phone's left margin, in CSS pixels. */
const marginWidth = 58;

/** Besley's figures are at most 0.63 em wide, its capitals and dashes at most 0.8 em. */
function width(text: string, size: number) {
  let ems = 0;
  for (const sign of text) ems += /[0-9]/.test(sign) ? 0.63 : /[\s.,]/.test(sign) ? 0.3 : 0.8;
  return ems * size;
}

/** True when a number would not fit the phone's margin at `size` px and so stands above the name. */
export function widerThanMargin(text: string, size: number) {
  return width(text, size) > marginWidth;
}
