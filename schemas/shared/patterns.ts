/** Names a designer gives (points, particulars, values, scores): also safe as form paths. */
export const NAME = "^[a-z][a-z0-9_]{0,62}$";
/** Lower-case RFC 9562 UUID: version 7 from devices and the server, version 8 from imported rows. */
export const UUID = "^[0-9a-f]{8}-[0-9a-f]{4}-[78][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$";
/** SHA-256 in lower-case hex. */
export const SHA256 = "^[0-9a-f]{64}$";
/** ISO 8601 calendar date; the days of the month are checked by `parseCivilDate`. */
export const CIVIL_DATE = "^\\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])$";
/** RFC 3339 instant in UTC with milliseconds at most. */
export const INSTANT = "^\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d{1,3})?Z$";
/** ISO 8601 duration of whole years, months, weeks or days: dates here are civil, never clock time. */
export const DURATION = "^P(?=\\d)(\\d{1,3}Y)?(\\d{1,4}M)?(\\d{1,4}W)?(\\d{1,5}D)?$";
/** RFC 5646 language tag, in its common shape. */
export const LANGUAGE = "^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$";
/** A member of a repeat: a number, or a name that the checklist gives. */
export const MEMBER = "^[a-z0-9][a-z0-9_]{0,31}$";
/** Name of an answer: a point, or a point of one member of a repeat (`gap_top@left`). */
export const ANSWER_NAME = "^[a-z][a-z0-9_]{0,62}(@[a-z0-9][a-z0-9_]{0,31})?$";

/** One character at least that is no blank. */
export const NOT_BLANK = "\\S";
