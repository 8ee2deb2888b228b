// A Slurm of one node in a folder of its own: started, restarted and stopped by the ids of its processes. Needs root, as its daemons do.
import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus, hostname } from 'node:os';
import { join } from 'node:path';

const sleep = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

/** @param state an empty folder @throws Error with what a daemon said, if it does not come up */
export async function slurm(state) {
  const at = (name) => join(state, name);
  for (const name of ['ctld', 'd', 'munge', 'log']) mkdirSync(at(name), { recursive: true });
  chmodSync(state, 0o755);
  writeFileSync(at('munge/key'), randomBytes(128), { mode: 0o400 });
  const config = at('slurm.conf');
  writeFileSync(
    config,
    `ClusterName=one
SlurmctldHost=${hostname().split('.')[0]}(127.0.0.1)
SlurmUser=root
SlurmctldPort=${20000 + (process.pid % 10000)}
SlurmdPort=${31000 + (process.pid % 10000)}
AuthType=auth/munge
AuthInfo=socket=${at('munge/socket')}
CredType=cred/munge
StateSaveLocation=${at('ctld')}
SlurmdSpoolDir=${at('d')}
SlurmctldPidFile=${at('ctld.pid')}
SlurmdPidFile=${at('d.pid')}
SlurmctldLogFile=${at('log/ctld')}
SlurmdLogFile=${at('log/d')}
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
SelectType=select/cons_tres
SelectTypeParameters=CR_Core
SchedulerParameters=batch_sched_delay=0
ReturnToService=2
NodeName=${hostname().split('.')[0]} NodeAddr=127.0.0.1 CPUs=${cpus().length} RealMemory=4000 State=UNKNOWN
PartitionName=all Nodes=ALL Default=YES MaxTime=INFINITE State=UP
`,
  );
  const env = { SLURM_CONF: config };
  const run = (name, args = []) => {
    const ran = spawnSync(name, args, { env: { ...process.env, ...env }, encoding: 'utf8' });
    if (ran.status !== 0) throw new Error(`${name}: ${ran.stderr || ran.stdout}`);
    return ran.stdout;
  };
  const pidIn = (name) => (existsSync(at(name)) ? Number(readFileSync(at(name), 'utf8')) : null);
  const end = async (pid) => {
    if (pid === null) return;
    try {
      process.kill(pid, 'SIGTERM');
      for (let tries = 0; tries < 200; tries += 1) {
        process.kill(pid, 0);
        await sleep(50);
      }
    } catch {
      // It has ended.
    }
  };
  run('munged', [
    '--force',
    `--key-file=${at('munge/key')}`,
    `--socket=${at('munge/socket')}`,
    `--pid-file=${at('munge/pid')}`,
    `--log-file=${at('munge/log')}`,
    `--seed-file=${at('munge/seed')}`,
  ]);
  const stop = async () => {
    for (const pid of ['d.pid', 'ctld.pid', 'munge/pid']) await end(pidIn(pid));
  };
  const idle = async () => {
    for (let tries = 0; tries < 120; tries += 1) {
      if (
        /idle|mix|alloc/.test(
          spawnSync('sinfo', ['-h', '-o', '%t'], {
            env: { ...process.env, ...env },
            encoding: 'utf8',
          }).stdout,
        )
      )
        return;
      await sleep(250);
    }
    throw new Error(
      `the node does not come up: ${readFileSync(at('log/ctld'), 'utf8').slice(-1500)}`,
    );
  };
  try {
    run('slurmctld');
    run('slurmd');
    await idle();
  } catch (error) {
    await stop();
    throw error;
  }
  return {
    env,
    stop,
    async restartController() {
      await end(pidIn('ctld.pid'));
      run('slurmctld');
      await idle();
    },
    /** When a job has left the queue. */
    async ended(job) {
      for (let tries = 0; tries < 2400; tries += 1) {
        const found = spawnSync('squeue', ['-h', '-j', job, '-o', '%T'], {
          env: { ...process.env, ...env },
          encoding: 'utf8',
        });
        if (!/PENDING|RUNNING|COMPLETING|CONFIGURING/.test(found.stdout) && found.status !== null)
          return;
        await sleep(250);
      }
      throw new Error(`job ${job} does not end`);
    },
  };
}
