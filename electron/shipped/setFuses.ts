import { FuseState, FuseV1Options, FuseVersion, flipFuses, getCurrentFuseWire } from '@electron/fuses';
import fuses from './fuses.json' with { type: 'json' };

/**
 * `node electron/shipped/setFuses.ts PROGRAM`: sets the switches in a copy of Electron's program as `fuses.json` has them, and
 * reads them back. Ends with 1 where one is not as it should be. Before a program is signed, never after.
 */
const [program = ''] = process.argv.slice(2);
const { RunAsNode, EnableCookieEncryption, OnlyLoadAppFromAsar, ...others } = fuses;

await flipFuses(program, {
  version: FuseVersion.V1,
  [FuseV1Options.RunAsNode]: RunAsNode.on,
  [FuseV1Options.EnableCookieEncryption]: EnableCookieEncryption.on,
  [FuseV1Options.EnableNodeOptionsEnvironmentVariable]: others.EnableNodeOptionsEnvironmentVariable.on,
  [FuseV1Options.EnableNodeCliInspectArguments]: others.EnableNodeCliInspectArguments.on,
  [FuseV1Options.EnableEmbeddedAsarIntegrityValidation]: others.EnableEmbeddedAsarIntegrityValidation.on,
  [FuseV1Options.OnlyLoadAppFromAsar]: OnlyLoadAppFromAsar.on,
  [FuseV1Options.LoadBrowserProcessSpecificV8Snapshot]: others.LoadBrowserProcessSpecificV8Snapshot.on,
  [FuseV1Options.GrantFileProtocolExtraPrivileges]: others.GrantFileProtocolExtraPrivileges.on,
});

const wire = await getCurrentFuseWire(program);
const wanted = new Map<string, boolean>(Object.entries(fuses).map(([name, { on }]) => [name, on]));
for (const [at, state] of Object.entries(wire)) {
  const name = FuseV1Options[Number(at)];
  if (name === undefined || !wanted.has(name)) continue;
  const as = wanted.get(name) ? FuseState.ENABLE : FuseState.DISABLE;
  process.stdout.write(`${name} ${state === FuseState.ENABLE ? 'on' : 'off'}\n`);
  if (state !== as) process.exitCode = 1;
  wanted.delete(name);
}
// A program that lacks a switch is not the one that these were chosen for.
if (wanted.size > 0) process.exitCode = 1;
