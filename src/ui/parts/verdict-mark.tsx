import type { Verdict } from '../../plan/limits.ts'
import './verdict-mark.css'

/** A word in a frame: plain, dashed or filled. The word carries the state, the frame helps from afar, colour only agrees. */
export const VerdictMark = ({ verdict }: { verdict: Verdict }) => <span class={`verdict ${verdict}`}>{verdict}</span>
