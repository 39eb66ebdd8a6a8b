# Judges how a life came up after a power cut, by its console: lines, log, and that it drives again. One line, of what is wrong; none
# when nothing is.
# Read first: `trace.awk`; then `lines`, then the console. `first` is 1 for the life that found nothing to take up.

$1 == "CACHE" { write_cache = substr($0, 7) }
$1 == "FLOODING" { flooding = 1 }

# The time at which the last of the lines was claimed at its rest level; -1 when one was not.
function all_claimed_at_rest(    i, claims, last) {
    for (i = 1; i <= events; i++) {
        if (did[i] == "out") {
            if (level_at("a", offset[i], when[i]) != rest[offset[i]]) { return -1 }
            claims++
            last = when[i]
        }
    }
    return claims >= lines ? last : -1
}

END {
    safe = all_claimed_at_rest()
    north = first("a", 0, 1, 0)
    if (!flooding) { print "it does not flood again" }
    else if (write_cache != "write back") { print "its disk has no cache to flush: " write_cache }
    else if (safe < 0) { print "a line was claimed that was not at rest" }
    # The pumps rest anew, 10 s, since nobody knows when they stopped.
    else if (north < safe + 10) { printf "its pump ran %.1f s after its line was claimed\n", north - safe }
    else if (first("a", 2, 1, 0) >= 0) { print "the latched pump ran" }
    else if (first("a", 1, 1, 0) < 0) { print "west's pump did not run" }
    else if (log_of["a"] ~ /set aside|corrupt|a new one begun/) { print "its journal was put aside" }
    else if (!is_first && log_of["a"] !~ /interlock memory of .* taken up again/) { print "it took up no memory" }
}
