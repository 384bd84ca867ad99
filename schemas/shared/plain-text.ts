const LONE_SURROGATE = /\p{Surrogate}/u;

/** Whether a text has half of a surrogate pair: no UTF-8 and no canonical JSON can write it. */
export const hasLoneSurrogate = (text: string): boolean => LONE_SURROGATE.test(text);

const PLAIN = /^[ !#-[\]-~]*$/;

/** Whether JSON writes a string as it is, a byte a character: nearly all strings of a log. */
export const isPlainText = (text: string): boolean => PLAIN.test(text);
