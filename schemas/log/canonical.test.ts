import { describe, expect, test } from "vitest";
import { fromHex, toHex, utf8 } from "./bytes.ts";
import { canonicalize } from "./canonical.ts";

describe("canonical JSON (RFC 8785)", () => {
  test("the example of RFC 8785 §3.2.2 comes out as printed there", () => {
    const value = JSON.parse(
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],' +
        '"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
    );
    expect(canonicalize(value)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],' +
        '"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  // RFC 8785 appendix B, by IEEE 754 bits; from memory.
  test.each([
    ["0000000000000000", "0"],
    ["8000000000000000", "0"],
    ["0000000000000001", "5e-324"],
    ["7fefffffffffffff", "1.7976931348623157e+308"],
    ["4340000000000000", "9007199254740992"],
    ["4430000000000000", "295147905179352830000"],
    ["44b52d02c7e14af5", "9.999999999999997e+22"],
    ["44b52d02c7e14af6", "1e+23"],
    ["444b1ae4d6e2ef4f", "999999999999999900000"],
    ["444b1ae4d6e2ef50", "1e+21"],
    ["3eb0c6f7a0b5ed8d", "0.000001"],
    ["3eb0c6f7a0b5ed8c", "9.999999999999997e-7"],
  ])("the double %s is %s", (bits, text) => {
    expect(canonicalize(new DataView(fromHex(bits).buffer).getFloat64(0))).toBe(text);
  });

  test("members are ordered by UTF-16 code units, not by code points", () => {
    const value = { "\u{1f600}": 1, "\ufb33": 2, "\r": 3, "1": 4, "": 5, ö: 6, "10": 7, "2": 8 };
    const keys = Object.keys(JSON.parse(canonicalize(value)));
    expect(canonicalize(value)).toBe(
      '{"":5,"\\r":3,"1":4,"10":7,"2":8,"ö":6,"\u{1f600}":1,"\ufb33":2}',
    );
    expect(keys).toHaveLength(8);
  });

  test("a member that is undefined is left out, as on the wire", () => {
    expect(canonicalize({ a: undefined, b: [{}] })).toBe('{"b":[{}]}');
  });

  test("what is inherited is not said", () => {
    expect(canonicalize(Object.create(null))).toBe("{}");
    expect(canonicalize(JSON.parse('{"__proto__":{"a":1}}'))).toBe('{"__proto__":{"a":1}}');
  });

  test.each([
    ["NaN", Number.NaN],
    ["an infinity", Number.NEGATIVE_INFINITY],
    ["a lone surrogate", "\ud800"],
    ["a lone surrogate as a name", { "\udc00": 1 }],
    ["undefined in a list", [undefined]],
    ["a bigint", 1n],
    ["a function", () => 1],
    ["a map", new Map()],
  ])("%s is refused", (_, value) => {
    expect(() => canonicalize(value)).toThrow(TypeError);
  });
});

describe("bytes", () => {
  test("UTF-8 of one to four bytes a character (RFC 3629 §7 and §4)", () => {
    expect(toHex(utf8("A\u2262\u0391."))).toBe("41e289a2ce912e");
    expect(toHex(utf8("\u{233b4}\u007f\u0080\u07ff\u0800\uffff"))).toBe(
      "f0a38eb47fc280dfbfe0a080efbfbf",
    );
    expect(() => utf8("a\ud800")).toThrow(TypeError);
    expect(() => utf8("\udc00\ud800")).toThrow(TypeError);
  });

  test("hexadecimal reads back, and anything else is refused", () => {
    expect(toHex(fromHex("00ff10"))).toBe("00ff10");
    for (const wrong of ["0", "0g", "AB", "0x"]) expect(() => fromHex(wrong)).toThrow(TypeError);
  });
});
