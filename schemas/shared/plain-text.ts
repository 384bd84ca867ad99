const LONE_SURROGATE = /\p{Surrogate}/u;

/** Whether a text has half of a surrogate pair: no UTF-8 and no canonical JSON can write it. */
export const hasLoneSurrogate = (text: string): boolean => LONE_SURROGATE.test(text);

const PLAIN = /^[ !#-[\]-~]*$/;

/** Whether JSON writes a string as it is, a byte a character: nearly all strings of a log. */
export const isPlainText = (text: string): boolean => PLAIN.test(text);

/**
 * Whether a text can be kept as it is: databases cut texts at a NUL, and no UTF-8 writes half of a
 * surrogate pair.
 */
export const isKeptText = (text: string): boolean =>
  isPlainText(text) || !(text.includes("\0") || hasLoneSurrogate(text));
