/** Under the drawing of the film’s path: seven letters at most. */
export const shorts: Readonly<Record<string, string>> = {
  Feed: 'Entra', Dev: 'Revel', Rinse: 'Enjuag', Fix: 'Fijad', Wash: 'Lavado', Knife: 'Aire', Dry: 'Secado', Take: 'Salida', Drive: 'Motor', Strips: 'Tiras', Silver: 'Plata', Instr: 'Instr', Safety: 'Segur',
}

/** What stands in the plan of a typical machine, by its English. What is not here is said in English; `densitometer` is a word that the record knows an instrument by. */
export const names: Readonly<Record<string, string>> = {
  'Early shift': 'Turno de mañana', 'Late shift': 'Turno de tarde', 'Night shift': 'Turno de noche',

  Feed: 'Alimentación', Developer: 'Revelador', Rinse: 'Enjuague', 'Fixing bath': 'Fijador', Washes: 'Lavados', 'Air knife': 'Cuchilla de aire', Dryer: 'Secador', 'Take-off': 'Salida', Drive: 'Tracción',
  'Control strips': 'Tiras de control', 'Silver cell': 'Celda de plata', Silver: 'Plata', Instruments: 'Instrumentos', 'Safety stations': 'Puestos de seguridad',

  'First can: label and light': 'Primera lata: etiqueta y luz', 'Developer temperature': 'Temperatura del revelador', 'Developer level': 'Nivel del revelador', 'Surface movement': 'Movimiento de la superficie', Circulation: 'Circulación',
  'Developer pH': 'pH del revelador', 'Developer specific gravity': 'Densidad relativa del revelador', 'Potassium bromide': 'Bromuro de potasio', 'Rinse flow': 'Caudal del enjuague', 'Fixing bath temperature': 'Temperatura del fijador',
  'Fixing bath pH': 'pH del fijador', 'Fixing bath sulfite': 'Sulfito del fijador', 'Fixing bath clear': 'Fijador transparente', 'Fixing bath level': 'Nivel del fijador', 'Wash flow': 'Caudal del lavado', 'Wash temperature': 'Temperatura del lavado',
  'Air clean': 'Aire limpio', 'Dryer temperature': 'Temperatura del secador', 'Scratches, both sides': 'Rayas, ambas caras', 'Film speed': 'Velocidad de la película', 'Tension and film wander': 'Tensión y desvío de la película', 'Control strip': 'Tira de control',
  'Silver cell current': 'Corriente de la celda de plata', 'Silver plate': 'Placa de plata', 'pH meter calibrated': 'Medidor de pH calibrado', 'Thermometer against a known one': 'Termómetro contra uno conocido', 'Eyewash and shower': 'Lavaojos y ducha',
  'Exhaust over tanks and mixing': 'Extracción sobre tanques y mezcla',

  'reference thermometer': 'termómetro de referencia', 'dip mark': 'marca de nivel', 'flow meter': 'caudalímetro', 'pH meter': 'medidor de pH', hydrometer: 'densímetro', burette: 'bureta', 'silver test paper': 'papel de plata', 'dryer probe': 'sonda del secador',
  'stopwatch on marked leader': 'cronómetro sobre cola marcada', 'cell ammeter': 'amperímetro de la celda',

  'Acetic acid 28 %': 'Ácido acético 28 %', 'Sodium sulfite solution, 100 g/L': 'Solución de sulfito de sodio, 100 g/L', 'Sodium sulfite, dry': 'Sulfito de sodio seco', Borax: 'Bórax', 'Boric acid': 'Ácido bórico',
  'Sodium carbonate, dry': 'Carbonato de sodio seco', 'Sodium bicarbonate': 'Bicarbonato de sodio',

  'Read the label before the lights go out: right process? any light permitted?': 'Lea la etiqueta antes de apagar las luces: ¿es el proceso correcto?, ¿se permite alguna luz?',
  'Same depth every time, away from the heater.': 'Siempre a la misma profundidad, lejos del calentador.',
  'From the mark; below it is minus.': 'Desde la marca; por debajo es menos.',
  'From the light side; torch off.': 'Desde el lado con luz; linterna apagada.',
  'At bath temperature; it counts when it moves less than 0.01 in 15 s.': 'A la temperatura del baño; vale cuando se mueve menos de 0,01 en 15 s.',
  'Let the sample stand; read at the foot of the meniscus.': 'Deje reposar la muestra; lea al pie del menisco.',
  'At bath temperature; rinse and blot the electrode.': 'A la temperatura del baño; enjuague el electrodo y séquelo sin frotar.',
  'Glass beaker against a lamp, after five minutes. By eye, never by nose.': 'Vaso de vidrio contra una lámpara, tras cinco minutos. Con la vista, nunca con la nariz.',
  'White paper in the jet for a minute.': 'Papel blanco en el chorro durante un minuto.',
  'Oblique light, both sides.': 'Luz rasante, ambas caras.',
  'Time a marked length of leader; do not trust the meter.': 'Cronometre un tramo marcado de cola; no se fíe del indicador.',
  'Between rolls, so that it sees the same bath. It is read one pass later.': 'Entre rollos, para que vea el mismo baño. Se lee una pasada después.',
  'A rotten-egg smell means hydrogen sulfide: leave, ventilate, do not sniff again.': 'Olor a huevo podrido es sulfuro de hidrógeno: salga, ventile, no vuelva a oler.',
  'Two buffers around the bath; a third within 0.1.': 'Dos tampones a ambos lados del baño; un tercero dentro de 0,1.',
  'Run both for a moment; once a week for a minute.': 'Hágalos correr un momento; una vez a la semana, un minuto.',
  'Smoke tube at the tank edge; never by nose.': 'Tubo de humo en el borde del tanque; nunca con la nariz.',

  'label and process agree': 'etiqueta y proceso coinciden', 'label and process differ': 'etiqueta y proceso no coinciden', 'surface moves': 'la superficie se mueve', 'surface still': 'superficie quieta', clear: 'transparente',
  'milky, sulfur or white sludge': 'lechoso, azufre o lodo blanco', 'paper stays white and dry': 'el papel queda blanco y seco', 'oil or water': 'aceite o agua', none: 'ninguna', scratched: 'rayada', 'even, film central': 'uniforme, película centrada',
  'uneven or wandering': 'desigual o se desvía', 'bright, no smell': 'brillante, sin olor', 'dark, or a smell': 'oscura, o huele', 'slope and third buffer good': 'pendiente y tercer tampón bien', out: 'fuera', 'within 0.1 °C': 'dentro de 0,1 °C', differs: 'difiere',
  'clear water, way free': 'agua clara, paso libre', 'no water, or blocked': 'sin agua, o bloqueado', 'draws away': 'aspira', 'does not draw': 'no aspira',

  'common practice, no source': 'práctica común, sin fuente', 'from memory': 'de memoria', 'training text for film archives, c. 2000, section 9': 'texto de formación para filmotecas, hacia 2000, sección 9',
  'maker’s data sheet for a black-and-white print film, 1999': 'hoja de datos del fabricante de una película de copia en blanco y negro, 1999', 'manual of a colour print process, 2006, as an analogue': 'manual de un proceso de copia en color, 2006, por analogía',
  'US Army course on film processors': 'curso del Ejército de EE. UU. sobre procesadoras de película', 'US Navy course on process control': 'curso de la Marina de EE. UU. sobre control de proceso', 'US Navy course in photography': 'curso de fotografía de la Marina de EE. UU.',
  'Society paper on fixing baths, 1929': 'artículo de sociedad científica sobre fijadores, 1929', 'US Navy course, silver recovery': 'curso de la Marina de EE. UU., recuperación de plata', 'handbook of photographic processing hazards': 'manual de riesgos del proceso fotográfico',
}
