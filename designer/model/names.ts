/** Words of a title as a name of the dialect: "Earth continuity" gives "earth_continuity". */
const slug = (title: string): string =>
  title
    .normalize("NFD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "_")
    .replace(/^[^a-z]+|_+$/g, "")
    .slice(0, 48);

/**
 * A name that is neither taken now nor was used by an earlier issue: a point's name is its
 * identity, and trends and open defects rest on it.
 */
export const nameFor = (title: string, taken: ReadonlySet<string>, fallback: string): string => {
  const base = slug(title) || fallback;
  if (!taken.has(base)) return base;
  let counter = 2;
  while (taken.has(`${base}_${counter}`)) counter += 1;
  return `${base}_${counter}`;
};
