import { canonicalize } from "@roundbook/schemas";
import { customType } from "drizzle-orm/sqlite-core";

/**
 * JSON in its canonical form, so that a projection derived again from the log gives the same bytes
 * whatever order a device wrote its members in.
 */
export const canonicalJson = <T>(name: string) =>
  customType<{ data: T; driverData: string }>({
    dataType: () => "text",
    toDriver: canonicalize,
    fromDriver: (text): T => JSON.parse(text),
  })(name);
