/** Every screen of the demo laboratory by its address, those apart that an entry must be made for first. */
export const screens = [
  '/now', '/machine/neg-1', '/station/neg-1-dev', '/station/neg-1-fix', '/station/safety',
  '/round', '/check/neg-1-dev-temp', '/check/neg-1-dev-surface', '/check/neg-1-fix-ph', '/check/neg-1-strip', '/check/none', '/splice/neg-1',
  '/bench', '/bench/acidBase.dose', '/bench/bath.correct', '/method', '/method/neg-1-dev-sulfite', '/method/neg-1-dev-bromide', '/method/ph-slope', '/mixing', '/mixing/begin/negative-developer',
  '/silver', '/replenish', '/waste', '/waste/new', '/response/neg-1-fix', '/strip/neg-1-strip',
  '/trends', '/trends/neg-1-fix-ph', '/trends/neg-1-strip/gamma', '/shift', '/record', '/board',
  '/menu', '/menu/devices', '/menu/files', '/menu/first', '/menu/labels', '/menu/phone',
  '/menu/plan', '/menu/plan/laboratory', '/menu/plan/new-machine', '/menu/plan/people', '/menu/plan/materials', '/menu/plan/materials/acetic-acid-28', '/menu/plan/methods/sulfite', '/menu/plan/formulas', '/menu/plan/formulas/negative-developer', '/menu/plan/shifts', '/menu/plan/cautions',
  '/menu/plan/machines/neg-1', '/menu/plan/stations/neg-1-fix', '/menu/plan/checks/neg-1-fix-ph', '/menu/plan/review',
  '/scan', '/at/1/station/none', '/emergency', '/emergency/eyes', '/safety', '/safety/acetic-acid-28', '/setup', '/nowhere',
] as const
