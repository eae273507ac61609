/** Milliseconds of this process's own processor time, so that what else the machine does cuts no search short. */
export function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
