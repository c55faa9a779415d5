import type { Translation } from '../translation.ts'
import type { marks as english } from '../en/marks.ts'

const figures: Record<string, string> = { baseFog: 'Base + velo', speed: 'Punto de sensibilidad', gamma: 'Gamma', contrast: 'Contraste', averageGradient: 'Gradiente medio', dMax: 'Densidad máxima' }

export const marks: Translation<typeof english> = {
  verdict: { IN: 'dentro de límites', WARN: 'entre el límite de aviso y el de acción', ACT: 'más allá del límite de acción' },
  station: { act: 'fuera de límites', warn: 'aviso', late: 'con retraso', due: 'pendiente' },
  machine: { startUp: 'Arrancando', running: 'En marcha', standby: 'En espera', changeOver: 'En cambio', shutDown: 'Parando', stopped: 'Parada' },
  held: 'Retenida',
  figure: (name) => figures[name] ?? name,
}
