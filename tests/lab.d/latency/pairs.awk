# From the console of the latency lab to one line for each edge: what was measured, and how many milliseconds it took; "lost" where
# nothing answered. Every eighth rack takes two bad samples to trip.

{ sub(/\r$/, "") }
$1 == "BASE" { base = $2 }
$1 == "AT" && $3 != "set" {
    line = base + ($4 == "base" ? 2 * racks + 1 : 2 * $5)
    if (line in waits) { print waits[line], "lost" }
    waits[line] = $3 " " ($4 == "base" ? "machine" : $5 % 8 == 7 ? "two-samples" : "one-sample")
    since[line] = $2
}
$1 == "AT" && $3 == "set" && $4 in waits && ($5 == 1 || $4 == base + 2 * racks + 1) {
    printf "%s %.3f\n", waits[$4], ($2 - since[$4]) * 1000
    delete waits[$4]
}
END { for (line in waits) { print waits[line], "lost" } }
