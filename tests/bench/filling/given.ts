/** The document a page of the bench was served with. */
export const given = <T>(): T =>
  JSON.parse(document.getElementById("document")?.textContent ?? "null") as T;

export const rootOf = (): HTMLElement => {
  const root = document.getElementById("root");
  if (!root) throw new Error("the page has lost its root");
  return root;
};
