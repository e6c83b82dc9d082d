/** OWASP's smallest recommended scrypt cost with 16 MiB: a PIN is short, so the hash must be slow. */
export const PIN_COST = { N: 2 ** 14, r: 8, p: 5 };
