import { sql } from "drizzle-orm";
import type { Db } from "../store/db.ts";

/** Names from the site down, by place. */
export async function readPaths(
  db: Db,
  placeIds: Iterable<string>,
): Promise<ReadonlyMap<string, readonly string[]>> {
  const ids = [...new Set(placeIds)];
  if (ids.length === 0) return new Map();
  const rows = await db.all<{ start: string; name: string }>(sql`
    with recursive up(start, name, parent, step) as (
      select id, name, parent, 0 from places
        where id in (select value from json_each(${JSON.stringify(ids)}))
      union all
      select up.start, places.name, places.parent, up.step + 1
        from up join places on places.id = up.parent where up.step < 16
    )
    select start, name from up order by start, step desc`);
  const paths = new Map<string, string[]>();
  for (const { start, name } of rows) {
    const path = paths.get(start) ?? [];
    path.push(name);
    paths.set(start, path);
  }
  return paths;
}
