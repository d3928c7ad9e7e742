/** Processor time between two readings of `process.cpuUsage()`, in milliseconds. */
export function processorMs(from: NodeJS.CpuUsage, to: NodeJS.CpuUsage): number {
  return (to.user + to.system - from.user - from.system) / 1000;
}
