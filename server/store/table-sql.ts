import { SQL } from "drizzle-orm";
import {
  getTableConfig,
  type SQLiteColumn,
  SQLiteSyncDialect,
  type SQLiteTable,
} from "drizzle-orm/sqlite-core";

const columnSql = (column: SQLiteColumn): string =>
  [
    `"${column.name}" ${column.getSQLType()}`,
    column.primary ? "primary key" : "",
    column.notNull ? "not null" : "",
    column.isUnique ? "unique" : "",
  ]
    .filter((part) => part !== "")
    .join(" ");

const list = (columns: readonly { name: string }[]): string =>
  columns.map((column) => `"${column.name}"`).join(", ");

/** The statements that make a table and its indexes, from its one definition. */
export function tableSql(table: SQLiteTable): readonly string[] {
  const { name, columns, primaryKeys, indexes } = getTableConfig(table);
  const keys = primaryKeys.map((key) => `primary key (${list(key.columns)})`);
  // A table known by several columns is its own index: half the size, one look-up less.
  const tail = keys.length > 0 ? " without rowid" : "";
  return [
    `create table "${name}" (${[...columns.map(columnSql), ...keys].join(", ")})${tail}`,
    ...indexes.map(({ config }) => {
      // The name of the table has no place in an expression of its own index.
      const plain = (sql: SQL): string =>
        new SQLiteSyncDialect().sqlToQuery(sql).sql.replaceAll(`"${name}".`, "");
      const on = config.columns.map((column) =>
        column instanceof SQL ? `(${plain(column)})` : `"${(column as SQLiteColumn).name}"`,
      );
      const where = config.where ? ` where ${plain(config.where)}` : "";
      const unique = config.unique ? "unique " : "";
      return `create ${unique}index "${config.name}" on "${name}" (${on.join(", ")})${where}`;
    }),
  ];
}
