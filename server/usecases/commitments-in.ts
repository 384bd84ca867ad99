/** Every commitment to a text that an entry's body holds, wherever it stands. */
export function commitmentsIn(body: unknown): string[] {
  const found = new Set<string>();
  const walk = (value: unknown): void => {
    if (typeof value !== "object" || value === null) return;
    if ("commit" in value && typeof value.commit === "string") found.add(value.commit);
    for (const member of Object.values(value)) walk(member);
  };
  walk(body);
  return [...found];
}
