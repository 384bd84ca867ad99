/** A point, and in a repeat the member it was asked for. */
export interface AnswerPlace {
  readonly point: string;
  /** Null outside repeats. */
  readonly member: string | null;
}

/** Name of an answer: the point's, or `point@member` in a repeat. Members go by id, never by place. */
export const answerName = (point: string, member: string | null): string =>
  member === null ? point : `${point}@${member}`;

/** The reverse of `answerName`; whether point and member exist is the checklist's business. */
export const splitAnswerName = (name: string): AnswerPlace => {
  const at = name.indexOf("@");
  return at < 0
    ? { point: name, member: null }
    : { point: name.slice(0, at), member: name.slice(at + 1) };
};
