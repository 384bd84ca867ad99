const PLAIN = /^[ !#-[\]-~]*$/;

/** Whether JSON writes a string as it is, a byte a character: nearly all strings of a log. */
export const isPlainText = (text: string): boolean => PLAIN.test(text);
