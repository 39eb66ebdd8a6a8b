# Judges a run of the guest by the kernel's trace of its lines: one line per proof, and a last one that counts.
# Read first: `trace.awk`; then `lines`, then the guest's console.

$1 == "SECOND" { second = substr($0, 8) }
$1 == "NOBODY" { nobody = substr($0, 8) }
$1 == "ALIVE" { alive[$2] = 1 }

# How often a line was written with its coil energised after it had rested.
function energisings(chip, line,    i, level, count) {
    level = rest[line]
    for (i = 1; i <= events; i++) {
        if (which[i] == chip && offset[i] == line && did[i] == "set") {
            count += new[i] != rest[line] && level == rest[line]
            level = new[i]
        }
    }
    return count + 0
}

# How often the service's log says that it commanded a load. Energising a coil is "on", or "off" through a closed contact.
function commands(chip, line,    said) {
    said = log_of[chip]
    return gsub("Load " load[line] ": " (load[line] ~ /fan|aerator/ ? "off" : "on") ", because", "", said)
}

# Hazard: a relay that clicks on by itself, above all while its line is claimed. A line must hold its rest level when it
# becomes an output, and each energising must have its command in the log.
function nothing_clicks_on(    i, claims, clicks, chip, line, times, unasked) {
    for (i = 1; i <= events; i++) {
        if (did[i] == "out") {
            claims++
            clicks += level_at(which[i], offset[i], when[i]) != rest[offset[i]]
        }
    }
    for (chip in base) {
        for (line in rest) {
            times += energisings(chip, line)
            unasked += energisings(chip, line) - commands(chip, line)
        }
    }
    verdict(claims == 4 * lines && clicks == 0 && times > 0 && unasked == 0, "nothing clicks on by itself",
        sprintf("%d claims of active-low and active-high lines, %d of them not at rest; %d energisings, %d without a command in the log",
            claims, clicks, times, unasked))
}

function pump_follows_its_cycle(    on, off) {
    on = first("a", 0, 1, 0)
    off = first("a", 0, 0, on)
    verdict(on >= at["noon "] && on < at["noon "] + 1 && off - on > 4.9 && off - on < 6.2 && first("a", 0, 1, off) < 0,
        "the pump follows its flood cycle", sprintf("on %.2f s after noon, for %.2f s of 5 s, scanned every 500 ms", on - at["noon "], off - on))
}

function low_float_stops_the_pump(    pulled, off) {
    pulled = at["float a"]
    off = first("a", 5, 0, pulled)
    verdict(level_at("a", 5, pulled) != rest[5] && off > 0 && off - pulled < 1 && first("a", 5, 1, off) < 0,
        "the low float stops the pump within 1 s", sprintf("%.0f ms from the float's edge to the relay's", (off - pulled) * 1000))
}

# The scan of this rack comes every 500 ms; without the edge the pump would wait for it.
function an_edge_wakes_the_scan(    pulled, off) {
    pulled = at["float a"]
    off = first("a", 5, 0, pulled)
    verdict(off > 0 && off - pulled < 0.1, "an edge does not wait for the next scan",
        sprintf("%.0f ms; the scan comes every 500 ms", (off - pulled) * 1000))
}

function sigterm_ends_at_rest(    told, gone, line, last, late) {
    told = at["term a"]
    gone = at["ended a"]
    for (line in rest) {
        if (level_at("a", line, told) == rest[line]) { continue }
        if (level_at("a", line, gone) != rest[line]) { late++ } else if (first("a", line, 0, told) > last) { last = first("a", line, 0, told) }
    }
    verdict(level_at("a", 7, told) != rest[7] && level_at("a", 3, told) != rest[3] && !late && code["a"] == 0,
        "SIGTERM leaves every line at rest before it is let go", sprintf("%s energised; %s at rest after %.0f ms, " \
        "gone after %.0f ms with exit code %s", energised_lines("a", told), late ? late " of them not" : "all", (last - told) * 1000, (gone - told) * 1000, code["a"]))
}

function sigkill_leaves_lines_to_their_pull(    before, wrong) {
    before = energised_lines("b", at["kill b"])
    wrong = not_at_rest("killed")
    verdict(before != "" && wrong == 0 && code["b"] == 137,
        "SIGKILL leaves lines to their pull", sprintf("%s energised; after it %d of %d lines are not at rest; on this pin driver", before, wrong, lines))
}

function after_the_end_lines_follow_their_pull() {
    verdict(not_at_rest("ended") == 0,
        "once let go, lines follow their pull", lines " lines at rest; on this pin driver")
}

function chip_loss_is_told_and_mended(    lost, back, line, claims, i, again) {
    lost = at["unplug c"]
    back = at["chip c 2"]
    for (i = 1; i <= events; i++) { claims += which[i] == "c" && did[i] == "out" && when[i] >= back }
    again = first("c", 3, 1, back)
    verdict(energised_lines("c", lost) != "" && alive["c"] && log_of["c"] ~ /No such device/ && claims == lines && again > 0 \
        && code["c"] == 0, "the loss of a chip is told, and mended when it is back",
        sprintf("%d lines claimed again at rest; lights on again %.1f s after the chip was back; exit code %s", claims, again - back, code["c"]))
}

function second_is_refused() {
    verdict(second ~ /^3 / && second ~ /held by/, "a second service on the same lines is refused", second)
}

function missing_permission_is_named() {
    verdict(nobody ~ /^3 / && nobody ~ /Permission/, "a missing permission is named", nobody)
}

END {
    if (!finished) { verdict(0, "the guest lives to its end", "no end mark on its console") }
    else {
        nothing_clicks_on()
        pump_follows_its_cycle()
        low_float_stops_the_pump()
        an_edge_wakes_the_scan()
        sigterm_ends_at_rest()
        after_the_end_lines_follow_their_pull()
        sigkill_leaves_lines_to_their_pull()
        chip_loss_is_told_and_mended()
        second_is_refused()
        missing_permission_is_named()
    }
    print suite ": " passed + 0 " passed, " failed + 0 " failed"
    exit failed > 0
}
