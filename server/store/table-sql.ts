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
      const on = config.columns.filter((column): column is SQLiteColumn => "name" in column);
      const only = config.where && new SQLiteSyncDialect().sqlToQuery(config.where).sql;
      // The name of the table has no place in the condition of its own index.
      const where = only ? ` where ${only.replaceAll(`"${name}".`, "")}` : "";
      const unique = config.unique ? "unique " : "";
      return `create ${unique}index "${config.name}" on "${name}" (${list(on)})${where}`;
    }),
  ];
}
