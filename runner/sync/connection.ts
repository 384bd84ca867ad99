/** What the state line of every page says. */
export interface Connection {
  /** Whether the last request was answered. */
  readonly online: boolean;
  /** Since when it was not, milliseconds UTC. */
  readonly offlineSince: number | null;
  readonly waiting: number;
  readonly refused: number;
  readonly sending: boolean;
  /** The server wants a sign-in before it takes anything more. */
  readonly signedOut: boolean;
  /** Sends what waits and refreshes what the device keeps. */
  refresh(): Promise<void>;
}
