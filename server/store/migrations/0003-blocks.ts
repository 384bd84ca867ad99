/** Beside the drafts that take them in. */
export const BLOCKS = {
  number: 3,
  name: "blocks",
  statements: [
    `create table blocks (
      name text primary key,
      revision integer not null,
      document text not null,
      changed_at integer not null,
      changed_by text not null
    ) strict`,
  ],
} as const;
