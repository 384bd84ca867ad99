/** Beside the drafts of checklists. */
export const INTERVAL_DRAFTS = {
  number: 4,
  name: "interval-drafts",
  statements: [
    `create table interval_drafts (
      id text primary key,
      revision integer not null,
      definition text not null,
      changed_at integer not null,
      changed_by text not null
    ) strict`,
  ],
} as const;
