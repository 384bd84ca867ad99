import Form from "@rjsf/core";
import type { RJSFSchema } from "@rjsf/utils";
import { createPrecompiledValidator } from "@rjsf/validator-ajv8";
import { createRoot } from "react-dom/client";
import { validators } from "./compiled-validators.ts";
import { given, rootOf } from "./given.ts";

const schema = given<RJSFSchema>();
const validator = createPrecompiledValidator(validators, schema);

createRoot(rootOf()).render(<Form schema={schema} validator={validator} />);
