const figures: Record<string, string> = { baseFog: 'Base + fog', speed: 'Speed point', gamma: 'Gamma', contrast: 'Contrast', averageGradient: 'Average gradient', dMax: 'Greatest density' }

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
  /** A strip figure by the name that the plan gives it. */
  figure: (name: string): string => figures[name] ?? name,
}
