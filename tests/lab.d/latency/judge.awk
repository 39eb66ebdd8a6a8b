# A table of what was measured, and the verdicts. Reads lines of condition, what was measured and milliseconds, sorted by all three.

{ key = $1 " " $2 }
$3 == "lost" { lost[key]++; next }
{ ms[key, ++count[key]] = $3 }

# The value that so many per mille do not exceed.
function share(key, per_mille,    at) {
    at = int(count[key] * per_mille / 1000 + 0.999999)
    return ms[key, at > 0 ? at : 1]
}

function row(condition, what,    key) {
    key = condition " " what
    printf "%s: %-5s %-12s %5d %4d %8.1f %8.1f %8.1f %8.1f\n", suite, condition, what, count[key], lost[key],
        share(key, 500), share(key, 990), share(key, 999), ms[key, count[key] + 0]
}

function verdict(ok, name, measured) {
    print suite ": " (ok ? "PASS" : "FAIL") " " name " (" measured ")"
    if (ok) { passed++ } else { failed++ }
}

function judge(condition,    one, two, machine) {
    one = condition " one-sample"
    two = condition " two-samples"
    machine = condition " machine"
    verdict(count[one] >= trips * 0.86 && lost[one] + lost[two] + lost[machine] == 0, condition ": every float stopped its pump",
        sprintf("%d and %d of them, %d lost", count[one], count[two], lost[one] + lost[two]))
    verdict(count[one] && share(one, 999) <= 200 && share(two, 999) <= 200, condition ": p99.9 is at most 200 ms",
        sprintf("%.1f ms at the first bad sample, %.1f ms at the second", share(one, 999), share(two, 999)))
    verdict(count[one] && share(one, 999) - share(machine, 999) <= 10, condition ": p99.9 is at most 10 ms above the machine's own",
        sprintf("%.1f ms above its %.1f ms", share(one, 999) - share(machine, 999), share(machine, 999)))
}

END {
    printf "%s: %-5s %-12s %5s %4s %8s %8s %8s %8s\n", suite, "ms", "", "n", "lost", "p50", "p99", "p99.9", "max"
    split("idle load", conditions)
    for (i = 1; i in conditions; i++) {
        row(conditions[i], "machine")
        row(conditions[i], "one-sample")
        row(conditions[i], "two-samples")
    }
    for (i = 1; i in conditions; i++) { judge(conditions[i]) }
    print suite ": " passed + 0 " passed, " failed + 0 " failed"
    exit failed > 0
}
