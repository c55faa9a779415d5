import type { Translation } from '../translation.ts'
import type { pairs as english } from '../en/pairs.ts'

export const pairs: Translation<typeof english> = {
  read: (check, value, time) => `${check} ${value} a las ${time}`,
  notRead: (check) => `${check}: no se leyó hacia la misma hora`,
  apartBy: (by, within) => `separados ${by}; deberían coincidir dentro de ${within}`,
  readNow: (check) => `Leer ahora: ${check}`,
  says: {
    evaporation: 'Nivel bajo y densidad alta: evaporación. Solo agua, hasta la marca.',
    lossOfBath: 'Nivel bajo, densidad en límites: una fuga, arrastre o ritmo bajo.',
    waterIn: 'Nivel alto y densidad baja: entra agua. ¿Pierde el serpentín o vuelve agua de lavado?',
    wrongMix: 'Densidad alta, nivel en límites: el regenerador está demasiado fuerte.',
    weakMix: 'Densidad baja, nivel en límites: diluido, o una mezcla agotada.',
    overfed: 'Nivel alto, densidad en límites: ritmo alto o rebose obstruido.',
    lossAndDilution: 'Los dos bajos: se perdió baño y entró agua.',
    concentrated: 'Los dos altos: regenerador demasiado fuerte, dado demasiado deprisa.',
    apart: 'Estos dos deberían coincidir y no coinciden.',
    readTheOther: 'Lea ahora el otro de la pareja; juntos dicen qué es.',
  },
  todo: {
    evaporation: ['Añadir solo agua, despacio en el retorno, hasta la marca.', 'Dejar mezclar y leer otra vez los dos.', 'Si vuelve en cada turno: cubrir el tanque parado, mirar la extracción.'],
    lossOfBath: ['Buscar una fuga: válvula de vaciado, cierre de la bomba, mangueras.', 'Mirar escurridores y arrastre.', 'Rellenar con regenerador o baño, nunca con agua; subir el ritmo solo si nada pierde.'],
    waterIn: ['Cerrar el agua del serpentín y vigilar el nivel.', 'Mirar el lavado: ¿vuelve su agua por encima del borde?', 'Purgar hasta la marca por la vía indicada y recuperar la concentración; valorar antes de añadir.'],
    wrongMix: ['Dejar de dar ese regenerador.', 'Leer su densidad relativa y su hoja de mezcla.', 'Valorar el baño antes de diluirlo.'],
    weakMix: ['Valorar el baño: ¿qué está flojo?', 'Mirar la hoja de mezcla del regenerador y su densidad relativa.', 'Añadir lo que pida la valoración, en porciones.'],
    overfed: ['Mirar el rebose: ¿está libre?', 'Medir el ritmo de reposición; ajustarlo al plan.'],
    lossAndDilution: ['Buscar primero la fuga, después por dónde entra agua.', 'Valorar y rellenar con baño o regenerador.'],
    concentrated: ['Dejar de dar regenerador.', 'Leer la densidad relativa del regenerador y su hoja de mezcla.', 'Valorar antes de purgar o diluir.'],
    apart: ['Leer otra vez los dos, con el termómetro removido y estabilizado.', 'Fiarse del que se comprobó último; mandar arreglar el otro.', 'Hasta que coincidan, ninguna corrección se guía por el dudoso.'],
    readTheOther: ['Uno solo engaña: leer el otro antes de añadir o girar nada.'],
  },
}
