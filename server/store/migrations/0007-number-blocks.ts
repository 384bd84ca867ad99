/** Asset numbers that devices were given to hand out without a network: no two ever overlap. */
export const NUMBER_BLOCKS = {
  number: 7,
  name: "number-blocks",
  statements: [
    `create table number_blocks (
      id integer primary key,
      device text not null,
      site text not null,
      prefix text not null,
      first integer not null,
      last integer not null,
      leased_at integer not null,
      unique (prefix, first)
    ) strict`,
    "create index number_blocks_of_device on number_blocks (device, site, prefix)",
  ],
} as const;
