/** Loaded into a service before it starts: from when it listens, it can start no program. */
import childProcess, { ChildProcess } from 'node:child_process';
import { syncBuiltinESMExports } from 'node:module';
import { Server } from 'node:net';

function refuse() {
  throw new Error('a program was to be started after the service listens');
}

const { listen } = Server.prototype;
Server.prototype.listen = function (...given) {
  for (const name of ['exec', 'execFile', 'execFileSync', 'execSync', 'fork', 'spawn', 'spawnSync']) {
    childProcess[name] = refuse;
  }
  ChildProcess.prototype.spawn = refuse;
  syncBuiltinESMExports();
  return listen.apply(this, given);
};
