// Node 20 has no Temporal of its own; browsers that lack it load the same polyfill.
import 'temporal-polyfill/global'
