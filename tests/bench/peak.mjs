process.on('exit', () => process.stderr.write(`PEAK ${process.resourceUsage().maxRSS}\n`));
