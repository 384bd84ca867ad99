import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "./form/form.css";
import "./pages/pages.css";
import { openDevice } from "./offline/database.ts";
import { App } from "./pages/app.tsx";
import { registerWorker } from "./sync/register-worker.ts";

const root = document.getElementById("root");
if (!root) throw new Error("index.html has lost its root");

const queries = new QueryClient({
  defaultOptions: { queries: { networkMode: "always", retry: false, staleTime: 5_000 } },
});
const opening = openDevice();
registerWorker(opening);

createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <App opening={opening} now={Date.now} />
    </QueryClientProvider>
  </StrictMode>,
);
