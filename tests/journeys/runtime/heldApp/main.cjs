/**
 * The app, held back until the test's tool is attached. Playwright does so by itself only for the Electron of the
 * `electron` package; with another program, a window that opens while it attaches can leave both waiting for ever.
 * The app's folder comes by KNOWNGOOD_TEST_APP.
 */
const path = require('node:path');
const { app } = require('electron');

const folder = process.env.KNOWNGOOD_TEST_APP;
require(
  path.join(path.dirname(require.resolve('playwright-core/package.json')), 'lib', 'server', 'electron', 'loader.js'),
);
process.argv.splice(process.argv.indexOf(__dirname), 1, folder);
app.setAppPath(folder);
require(path.join(folder, 'dist', 'main.cjs'));
