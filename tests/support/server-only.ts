// Stands in for the `server-only` marker, which throws outside a server build.
export {};
