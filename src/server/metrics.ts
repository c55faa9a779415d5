/** Counts of this process, in the text that Prometheus reads (exposition format 0.0.4). */
const secondsBuckets = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5] as const

type Labels = Readonly<Record<string, string | number>>

const labelText = (labels: Labels): string => {
  const pairs = Object.entries(labels).map(([name, value]) => `${name}="${String(value).replace(/[\\"\n]/g, (it) => (it === '\n' ? '\\n' : `\\${it}`))}"`)
  return pairs.length ? `{${pairs.join(',')}}` : ''
}

class Counter {
  readonly #values = new Map<string, { labels: Labels; value: number }>()
  add(labels: Labels, by = 1): void {
    const key = labelText(labels)
    const now = this.#values.get(key)
    if (now) now.value += by
    else this.#values.set(key, { labels, value: by })
  }
  lines(name: string): string[] {
    return [...this.#values.values()].map(({ labels, value }) => `${name}${labelText(labels)} ${value}`)
  }
}

class Histogram {
  readonly #series = new Map<string, { labels: Labels; counts: number[]; sum: number; count: number }>()
  observe(labels: Labels, seconds: number): void {
    const key = labelText(labels)
    let series = this.#series.get(key)
    if (!series) this.#series.set(key, (series = { labels, counts: secondsBuckets.map(() => 0), sum: 0, count: 0 }))
    series.sum += seconds
    series.count += 1
    secondsBuckets.forEach((most, place) => {
      if (seconds <= most) series.counts[place]! += 1
    })
  }
  lines(name: string): string[] {
    return [...this.#series.values()].flatMap(({ labels, counts, sum, count }) => [
      ...secondsBuckets.map((most, place) => `${name}_bucket${labelText({ ...labels, le: most })} ${counts[place]}`),
      `${name}_bucket${labelText({ ...labels, le: '+Inf' })} ${count}`,
      `${name}_sum${labelText(labels)} ${sum}`,
      `${name}_count${labelText(labels)} ${count}`,
    ])
  }
}

export interface Gauge {
  name: string
  help: string
  values: readonly { labels: Labels; value: number }[]
}

export class Metrics {
  readonly requests = new Counter()
  readonly seconds = new Histogram()
  readonly refusals = new Counter()
  readonly stored = new Counter()
  readonly repeated = new Counter()
  liveConnections = 0

  text(gauges: readonly Gauge[]): string {
    const block = (name: string, help: string, type: string, lines: readonly string[]): string[] => [`# HELP ${name} ${help}`, `# TYPE ${name} ${type}`, ...lines]
    const live: Gauge = { name: 'bathkeeper_live_connections', help: 'Open boards that hear of news at once.', values: [{ labels: {}, value: this.liveConnections }] }
    return [
      ...block('bathkeeper_requests_total', 'Requests by route, method and status.', 'counter', this.requests.lines('bathkeeper_requests_total')),
      ...block('bathkeeper_request_seconds', 'Time to answer.', 'histogram', this.seconds.lines('bathkeeper_request_seconds')),
      ...block('bathkeeper_refusals_total', 'Refusals by code.', 'counter', this.refusals.lines('bathkeeper_refusals_total')),
      ...block('bathkeeper_entries_stored_total', 'Entries stored, by status.', 'counter', this.stored.lines('bathkeeper_entries_stored_total')),
      ...block('bathkeeper_entries_repeated_total', 'Entries sent again and acknowledged again.', 'counter', this.repeated.lines('bathkeeper_entries_repeated_total')),
      ...[live, ...gauges].flatMap(({ name, help, values }) => block(name, help, 'gauge', values.map(({ labels, value }) => `${name}${labelText(labels)} ${value}`))),
      '',
    ].join('\n')
  }
}
