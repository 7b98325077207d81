/** A worker that draws what-ifs and solves for break-even values, so that the page stays free for the user. */
import { whatIfService } from './what-if-service.ts';
import { serve } from './worker-port.ts';

serve(whatIfService());
