export const marks = {
  verdict: { IN: 'in limits', WARN: 'between warning and action limit', ACT: 'beyond the action limit' },
  station: { act: 'out of limits', warn: 'warning', late: 'late', due: 'due' },
  machine: {
    startUp: 'Starting up',
    running: 'Running',
    standby: 'Standby',
    changeOver: 'Changing over',
    shutDown: 'Shutting down',
    stopped: 'Stopped',
  },
  held: 'Held',
}
