/** Every adapter, by topic. A topic that is not here is listed as unsupported. */
import type { Adapters } from '../harness';

export const adapters: Adapters = {};
