-- wrk: one POST again and again, its figures as one line of JSON. BODY: a file. TYPE: its media type.
local file = assert(io.open(os.getenv("BODY"), "rb"))
wrk.method = "POST"
wrk.body = file:read("*a")
file:close()
wrk.headers["Content-Type"] = os.getenv("TYPE")

function done(summary, latency, requests)
  local errors = summary.errors
  io.write(string.format('{"rate":%.1f,"p50":%.3f,"p99":%.3f,"errors":%d}\n',
    summary.requests / summary.duration * 1e6, latency:percentile(50) / 1000, latency:percentile(99) / 1000,
    errors.connect + errors.read + errors.write + errors.status + errors.timeout))
end
