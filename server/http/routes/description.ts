import type { Handlers } from "../handler.ts";
import { describeApi } from "../openapi.ts";

const description = describeApi();

export const descriptionRoutes: Handlers<"GET /api/openapi.json"> = {
  "GET /api/openapi.json": () => description,
};
