// The worker's way in: TypeScript is not known to a new thread until tsx has said so.
import { register } from 'tsx/esm/api';

register();
await import('./import-work.ts');
