/** The door to Ajv, which generates code: the server, tests and the command line, never a browser. */
export { compileAnswers } from "./compile-answers.ts";
export { compileSchema, DOCUMENT_LIMITS } from "./compile-schema.ts";
export { parseBlock } from "./parse-block.ts";
export { parseChecklist } from "./parse-checklist.ts";
