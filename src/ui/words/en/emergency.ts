export const emergency = {
  title: 'Emergency',
  call: 'Who to call',
  eyewash: 'Eyewash and shower',
  assembly: 'Assembly point',
  light: 'Light and open film',
}
