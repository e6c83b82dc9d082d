/** The page's security policy forbids building code from strings, which zod would try first; imported before any schema. */
import { z } from 'zod';

z.config({ jitless: true });
