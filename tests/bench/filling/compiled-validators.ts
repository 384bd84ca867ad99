/** Put in place by the build of the page: the schema as functions, since the policy forbids making them there. */
export const validators = {};
