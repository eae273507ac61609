import { engineWith } from './engine-with.js';
import { BareSession } from './incremental/bare-session.js';
import type { Port } from './protocol.js';
import { serve } from './serve.js';

serve(self as unknown as Port, engineWith(new BareSession()));
