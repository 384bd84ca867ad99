/** Where digests go and which wait to be sent: personal, and so beside the log. */
export const MAILS = {
  number: 6,
  name: "mails",
  statements: [
    `create table digests (
      person text primary key,
      address text not null,
      weekdays text not null
    ) strict`,
    `create table mails (
      id text primary key,
      person text not null,
      day integer not null,
      address text not null,
      subject text not null,
      text text not null,
      made_at integer not null,
      attempts integer not null,
      next_at integer,
      sent_at integer,
      last_error text,
      unique (person, day)
    ) strict`,
    "create index mails_waiting on mails (next_at) where next_at is not null",
  ],
} as const;
