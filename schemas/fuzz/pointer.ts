/** Whether a JSON Pointer (RFC 6901) leads to an own member of a value. */
export const resolves = (value: unknown, pointer: string): boolean => {
  const [first, ...tokens] = pointer.split("/");
  let part = value;
  for (const token of tokens) {
    const name = token.replaceAll("~1", "/").replaceAll("~0", "~");
    if (typeof part !== "object" || part === null || !Object.hasOwn(part, name)) return false;
    part = Reflect.get(part, name);
  }
  return first === "";
};
