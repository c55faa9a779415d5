export const pad = { pad: 'Number pad', erase: 'Erase the last figure', point: 'Decimal point', minus: 'Change the sign' }
