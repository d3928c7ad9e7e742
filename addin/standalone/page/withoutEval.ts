import { config } from "zod/mini";

// The page’s policy forbids to make scripts of texts, and zod would try whether it may. To be loaded before any schema.
config({ jitless: true });
