import { createInlineEngine } from './inline-engine.js';
import type { Port } from './protocol.js';
import { serve } from './serve.js';

serve(self as unknown as Port, createInlineEngine());
