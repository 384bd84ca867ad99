/** An instant as entries write it: RFC 3339 in UTC with milliseconds. */
export const instantOf = (milliseconds: number): string => new Date(milliseconds).toISOString();
