import { refuseOldNode } from './nodeVersion.mjs';

// `npm start`: installs what is missing, builds the page and serves it on this machine.
// Everything else is imported after this line, since an old Node would stumble over it.
refuseOldNode();

const { ensureInstalled } = await import('./install.mjs');
const { buildPage, root } = await import('./run.mjs');
const { createSheetServer, listen } = await import('./serve.mjs');
const { join } = await import('node:path');

const usualPort = 4173;
const portsTried = 20;

process.exitCode = await start();

async function start() {
  const asked = process.env.PORT ?? '';
  if (asked !== '' && !(/^\d+$/.test(asked) && Number(asked) <= 65535)) {
    console.error(`PORT is "${asked}"; it must be a number from 0 to 65535.`);
    return 1;
  }
  if (!(await ensureInstalled())) return 1;
  if ((await buildPage()) !== 0) {
    console.error('The page could not be built; the reason stands above.');
    return 1;
  }
  return serve(asked);
}

/** @param {string} asked */
async function serve(asked) {
  const host = process.env.HOST || '127.0.0.1';
  const server = createSheetServer(join(root, 'dist'));
  try {
    const port =
      asked === ''
        ? await listen(server, { host, port: usualPort, attempts: portsTried })
        : await listen(server, { host, port: Number(asked) });
    const name = host === '127.0.0.1' || host === '0.0.0.0' ? 'localhost' : host;
    console.log(`Heat and Rail is open at http://${name}:${port}/ (Ctrl-C ends it)`);
  } catch (error) {
    const { code, message } = /** @type {NodeJS.ErrnoException} */ (error);
    const reason = code === 'EADDRINUSE' ? 'the port is taken; set PORT to another one' : message;
    console.error(`The page could not be served: ${reason}.`);
    return 1;
  }
  for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => process.exit(0));
  return 0;
}
