const appendOnly = (table: string, clash: string): readonly string[] => [
  `create trigger ${table}_no_update before update on ${table}
   begin select raise(abort, '${table} is append-only'); end`,
  `create trigger ${table}_no_delete before delete on ${table}
   begin select raise(abort, '${table} is append-only'); end`,
  // INSERT OR REPLACE deletes the old row without asking any trigger: it must not get that far.
  `create trigger ${table}_no_replace before insert on ${table}
   when exists (select 1 from ${table} where ${clash})
   begin select raise(abort, '${table} is append-only'); end`,
];

/** The log: these tables are never altered by a later migration. */
export const LOG = {
  number: 1,
  name: "log",
  statements: [
    `create table entries (
      seq integer primary key,
      id text not null unique,
      kind text not null,
      asset text,
      author text not null,
      device text not null,
      civil_date integer not null,
      at integer not null,
      received_at integer not null,
      hash text not null,
      flags text not null,
      delivered_by text
    ) strict`,
    "create index entries_by_asset on entries (asset, civil_date, at, seq)",
    `create table entry_docs (
      seq integer primary key,
      entry text not null,
      leaf text not null,
      signature text
    ) strict`,
    `create table log_state (
      one integer primary key check (one = 1),
      size integer not null,
      frontier text not null
    ) strict`,
    "insert into log_state (one, size, frontier) values (1, 0, '[]')",
    `create table contents (
      commit_hash text primary key,
      salt text not null,
      text text not null
    ) strict`,
    ...appendOnly("entries", "seq = new.seq or id = new.id"),
    ...appendOnly("entry_docs", "seq = new.seq"),
    `create trigger entries_no_gap before insert on entries
     when new.seq <> 1 + coalesce((select max(seq) from entries), 0)
     begin select raise(abort, 'entries follow one another without a gap'); end`,
    `create trigger log_state_only_grows before update on log_state
     when new.size < old.size or new.one <> old.one
     begin select raise(abort, 'the log only grows'); end`,
    `create trigger log_state_no_delete before delete on log_state
     begin select raise(abort, 'the log only grows'); end`,
    `create trigger log_state_no_replace before insert on log_state
     begin select raise(abort, 'the log has one state'); end`,
  ],
} as const;
