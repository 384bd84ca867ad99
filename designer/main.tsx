import "@roundbook/runner/form.css";
import "./designer.css";
import "./interval/interval.css";
import "./pages/plan.css";
import { deskEnglish, MessagesProvider } from "@roundbook/runner/form";
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./pages/app.tsx";

const root = document.getElementById("root");
if (!root) throw new Error("index.html has lost its root");

const queries = new QueryClient({
  defaultOptions: { queries: { retry: false, staleTime: 5_000 } },
});

createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <MessagesProvider messages={deskEnglish}>
        <App />
      </MessagesProvider>
    </QueryClientProvider>
  </StrictMode>,
);
