/** Mutable tables beside the log: they survive a rebuild. */
export const ESTATE = {
  number: 2,
  name: "estate",
  statements: [
    `create table estate (
      one integer primary key check (one = 1),
      id text not null,
      name text not null,
      server_device text not null
    ) strict`,
    `create table accounts (
      sign_in text primary key,
      password_hash text not null,
      person text not null unique,
      changed_at integer not null
    ) strict`,
    `create table sessions (
      token_hash text primary key,
      person text not null,
      created_at integer not null,
      expires_at integer not null
    ) strict`,
    "create index sessions_by_expiry on sessions (expires_at)",
    `create table drafts (
      checklist text primary key,
      revision integer not null,
      document text not null,
      changed_at integer not null,
      changed_by text not null
    ) strict`,
    `create table evidence (
      sha256 text primary key,
      mime text not null,
      size integer not null,
      received_at integer not null
    ) strict`,
  ],
} as const;
