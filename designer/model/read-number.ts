/** A decimal comma is a decimal sign only where no list of choices could be meant. */
export const readNumber = (text: string): number | undefined => {
  const trimmed = text.trim().replace(",", ".");
  const value = Number(trimmed);
  return trimmed === "" || !Number.isFinite(value) ? undefined : value;
};
