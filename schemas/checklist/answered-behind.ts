import type { Checklist } from "./meta-schema.ts";
import { pointsBehind } from "./points-behind.ts";

/**
 * Calculated points that come, by whatever steps, from an answer somebody gave. What the others are
 * worth was known before anybody looked.
 */
export function answeredBehind(doc: Checklist): ReadonlySet<string> {
  const users = new Map<string, string[]>();
  const behind = pointsBehind(doc);
  for (const [name, { calculate }] of Object.entries(doc.properties))
    for (const source of calculate === undefined ? [] : behind(calculate))
      users.set(source, [...(users.get(source) ?? []), name]);
  const found = new Set<string>();
  const open = [...users.keys()].filter(
    (name) => Object.hasOwn(doc.properties, name) && !doc.properties[name]?.calculate,
  );
  for (let name = open.pop(); name !== undefined; name = open.pop())
    for (const user of users.get(name) ?? [])
      if (!found.has(user)) {
        found.add(user);
        open.push(user);
      }
  return found;
}
