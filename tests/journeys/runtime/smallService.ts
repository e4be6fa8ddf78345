import { forkedHost } from '../../../electron/service/transport/forkedHost.ts';
import { utilityHost } from '../../../electron/service/transport/utilityHost.ts';
import { smallRouter } from '../../builders/smallRouter.ts';

/**
 * The service's doors with nothing behind them that this Electron could not load: it shows that the product's own way,
 * a utility process that is handed real ports, carries calls and ends in order.
 */
const parent: typeof process.parentPort | undefined = process.parentPort;
const host = parent ? utilityHost(parent) : forkedHost(process);
host.onEnd(() => process.exit(0));
void host.serve({ router: smallRouter().router, sealHeads: () => undefined, close: () => undefined });
