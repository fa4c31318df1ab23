process.on('exit', () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  process.stderr.write(`PEAK ${maxRSS} BUSY ${userCPUTime + systemCPUTime}\n`);
});
