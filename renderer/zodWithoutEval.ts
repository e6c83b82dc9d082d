/**
 * The page's security policy forbids building code from strings, which zod would try first. Said where zod looks for it when it
 * is loaded, so that the page need not load it to ask who is to work; imported before any schema.
 */
(globalThis as { __zod_globalConfig?: { jitless: boolean } }).__zod_globalConfig = { jitless: true };
