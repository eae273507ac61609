// Run before each file: a run in another time zone shows something only where that zone is in force.
const { timeZone } = new Intl.DateTimeFormat().resolvedOptions();
const { TZ } = process.env;
if (timeZone !== TZ || new Date(2027, 6, 1).getTimezoneOffset() === 0)
  throw new Error(`this run is for ${TZ}, and the machine is set to ${timeZone}`);
