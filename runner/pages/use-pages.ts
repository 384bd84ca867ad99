import type { Page } from "@roundbook/schemas";
import { useInfiniteQuery } from "@tanstack/react-query";
import { getJson } from "../sync/client.ts";

/** A list of the server read page by page with its cursor. */
export const usePages = <Row>(path: string) =>
  useInfiniteQuery({
    queryKey: ["pages", path],
    initialPageParam: null as string | null,
    queryFn: ({ pageParam }) =>
      getJson<Page<Row>>(
        pageParam === null
          ? path
          : `${path}${path.includes("?") ? "&" : "?"}cursor=${encodeURIComponent(pageParam)}`,
      ),
    getNextPageParam: (page) => page.next,
    retry: false,
    networkMode: "always",
  });
