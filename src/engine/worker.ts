import { engineWith } from './engine-with.js';
import { BareSession } from './incremental/bare-session.js';
import { showLife } from './life-sign.js';
import type { Port } from './protocol.js';
import { serve } from './serve.js';

const port = self as unknown as Port;
serve(port, engineWith(new BareSession()));
showLife((sign) => port.postMessage(sign));
