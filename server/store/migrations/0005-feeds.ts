/** Secret calendar addresses: revoked ones stay, so that an address is never given twice. */
export const FEEDS = {
  number: 5,
  name: "feeds",
  statements: [
    `create table feeds (
      id text primary key,
      token_hash text not null unique,
      kind text not null check (kind in ('site', 'person')),
      subject text not null,
      created_at integer not null,
      created_by text not null,
      revoked_at integer
    ) strict`,
  ],
} as const;
