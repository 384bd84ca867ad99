/** UTF-8 of a well-formed string; the language itself has no encoder. */
export function utf8(text: string): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(text.length * 3);
  let length = 0;
  const tail = (code: number, shift: number) => {
    out[length++] = 0x80 | ((code >> shift) & 0x3f);
  };
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index);
    if (unit < 0x80) {
      out[length++] = unit;
    } else if (unit < 0x800) {
      out[length++] = 0xc0 | (unit >> 6);
      tail(unit, 0);
    } else if (unit < 0xd800 || unit > 0xdfff) {
      out[length++] = 0xe0 | (unit >> 12);
      tail(unit, 6);
      tail(unit, 0);
    } else {
      const code = text.codePointAt(index++) ?? 0;
      // A lone half would give bytes that no reader turns back into the same text.
      if (code < 0x10000 || unit > 0xdbff) throw new TypeError("no UTF-8 for a lone surrogate");
      out[length++] = 0xf0 | (code >> 18);
      tail(code, 12);
      tail(code, 6);
      tail(code, 0);
    }
  }
  return out.slice(0, length);
}

const HEX = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, "0"));

export function toHex(bytes: Uint8Array): string {
  let out = "";
  for (const byte of bytes) out += HEX[byte];
  return out;
}

/** @throws TypeError when `hex` is not lower-case hexadecimal of whole bytes. */
export function fromHex(hex: string): Uint8Array<ArrayBuffer> {
  if (hex.length % 2 !== 0 || !/^[0-9a-f]*$/.test(hex)) throw new TypeError("not hexadecimal");
  const out = new Uint8Array(hex.length / 2);
  for (let index = 0; index < out.length; index++)
    out[index] = Number.parseInt(hex.slice(index * 2, index * 2 + 2), 16);
  return out;
}

export function equalBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}
