# Judges the story of the installed package: one line per proof, and a last one that counts.
# Read first: `trace.awk`; then `lines`, then the guest's console. `hung` says whether a kernel was to hang.

$1 == "INSTALLED" { installed = $2 " " $3 }
$1 == "SECURITY" { security = substr($0, 10) }
$1 == "SEALED" { sealed++ }
$1 == "READS" { reads++ }
$1 == "PSS" { pss = $2 }
$1 == "LATER" { pss_later = $2 }
$1 == "STOPPED" { stopped = $2 }
$1 == "PAGE" { page = substr($0, 6) }
$1 == "ROOT" { root = substr($0, 6) }
$1 == "NETWORKS" { networks = substr($0, 10) }
$1 == "LISTENS" { listens = substr($0, 9) }
$1 == "DRAFT" || $1 == "APPLY" { answers = answers $3 " " }
$1 == "APPLIED" { applied = substr($0, 9) }
$1 == "PEOPLE" { people = substr($0, 8) }
$1 == "NOTICES" { notices = substr($0, 9) }
$1 == "TOLD" { told = substr($0, 6) }
$1 == "AFTER" { after_stop = substr($0, 7) }
$1 == "HANG" { board_watchdog = $2 ", and it is " $3 " s" }
$1 == "SEEN" && $2 == "hang" { hung_at = $3 }
$1 == "SEEN" && $2 == "reset" && hung_at && !reset_after { reset_after = $3 - hung_at }
$1 == "REBOOTED" { rebooted = $2 }

# The time at which the last of the lines was claimed at its rest level, from a moment on; -1 when not all were.
function all_claimed_at_rest(from,    i, seen, count) {
    for (i = 1; i <= events; i++) {
        if (when[i] < from || did[i] != "out" || seen[offset[i]]++) { continue }
        if (level_at("a", offset[i], when[i]) != rest[offset[i]]) { return -1 }
        if (++count == lines) { return when[i] }
    }
    return -1
}

function installing_starts_nothing() {
    verdict(installed == "inactive disabled", "installing starts nothing", installed)
}

function waits_for_a_late_chip(    i, early, safe) {
    for (i = 1; i <= events; i++) { early += when[i] < at["chip a"] }
    safe = all_claimed_at_rest(at["chip a"])
    verdict(!early && safe > 0 && log_of["a"] ~ /No GPIO chip labelled/ && at["ready a"] - at["chip a"] < 10,
        "a chip that is late is told of and waited for",
        sprintf("started %.1f s before it; %d lines claimed at rest %.1f s after it, ready after %.1f s",
            at["chip a"] - at["start a"], lines, safe - at["chip a"], at["ready a"] - at["chip a"]))
}

function an_unknown_hour_lights_nothing(    lit) {
    lit = first("a", 6, 1, 0)
    verdict(lit > at["time a"] && log_of["a"] ~ /Clock wall clock: /, "lights wait for the hour to be known",
        sprintf("first lit %.1f s after it was", lit - at["time a"]))
}

function is_sealed_in() {
    verdict(security ~ /Uid:[ \t]*[1-9]/ && security ~ /CapEff:[ \t]*0+ / && security ~ /NoNewPrivs:[ \t]*1 / && security ~ /Seccomp:[ \t]*2 / \
        && sealed == 4 && reads == 1, "the service sees devices and buses that it needs, and can touch nothing else", security)
}

# 211A is 8474 in hexadecimal, and 0100007F the machine itself.
function serves_its_page() {
    verdict(page ~ /200 OK scans are good/ && root ~ /200 OK/ && listens ~ /^0100007F:211A *$/ && networks ~ /^lo *$/,
        "the page is served to this machine only, by a service that has no network",
        sprintf("%s; listens at %s; the service sees %s", page, listens, networks))
}

function takes_another_rack_file() {
    verdict(answers == "303 200 " && applied == "1 rackcontroller same 1",
        "a rack file that is changed on the page is in place, and the same process drives by it; the earlier one is kept", applied)
}

function root_lets_people_in() {
    verdict(people ~ /^rackcontroller 600 HTTP\/1.1 (303|401)/, "people whom root sets up are let in by a service that is not root", people)
}

function tells_of_a_stop() {
    verdict(notices ~ /^active [1-9][0-9]* none sealed/ && told ~ /^[1-9][0-9]* active/,
        "notices say that the rack is driven, and by a signed request that it was stopped, from a unit that reaches no relay",
        notices " PSS; told " told)
}

function nobody_wakes_it() {
    verdict(after_stop ~ /^inactive inactive *$/, "after a stop no browser starts the rack", after_stop)
}

function comes_back(name, mark, back, within,    safe, before) {
    before = energised_lines("a", at[mark])
    safe = all_claimed_at_rest(at[mark])
    verdict(before != "" && safe > 0 && safe - at[mark] < within && at[back] > safe, name,
        sprintf("%s energised; every line driven to rest after %.1f s, of at most %d s; ready again after %.1f s",
            before, safe - at[mark], within, at[back] - at[mark]))
}

function a_stop_is_safe(    before) {
    before = energised_lines("a", at["stop a"])
    verdict(before != "" && stopped == "success" && not_at_rest("stopped") == 0 && at["stopped a"] - at["stop a"] < 5,
        "a stop leaves every line at rest", sprintf("%s energised; stopped after %.1f s", before, at["stopped a"] - at["stop a"]))
}

# By the host's clock, from the last word of the kernel that hangs to the first of the firmware.
function a_hung_kernel_is_reset() {
    verdict(reset_after > 0 && reset_after <= 20 && board_watchdog ~ /^10s/, "a hung kernel is reset by the board's watchdog within 20 s",
        sprintf("after %.1f s; the package's example sets it to %s", reset_after, board_watchdog))
}

function the_boot_starts_it() {
    verdict(rebooted == "active" && log_of["second"] ~ /interlock memory of .* taken up again/ && log_of["second"] !~ /set aside/ \
        && log_of["second"] ~ /clock-untrusted/,
        "after the reset it drives again by itself, remembers, and does not trust a clock that lost its time", rebooted)
}

function lets_go_of_memory() {
    verdict(pss_later > 0 && pss_later < 0.85 * pss, "a minute after its start the service lets go of what only that needed",
        pss " and then " pss_later " kB PSS")
}

END {
    if (!finished) { verdict(0, "the guest lives to its end", "no end mark on its console") }
    else {
        installing_starts_nothing()
        waits_for_a_late_chip()
        an_unknown_hour_lights_nothing()
        is_sealed_in()
        lets_go_of_memory()
        serves_its_page()
        takes_another_rack_file()
        root_lets_people_in()
        comes_back("a killed service leaves safe outputs and comes back", "kill a", "again a", 5)
        comes_back("a hung service is ended by the watchdog, outputs safe", "hang a", "recovered a", 10)
        a_stop_is_safe()
        nobody_wakes_it()
        tells_of_a_stop()
        if (hung) {
            a_hung_kernel_is_reset()
            the_boot_starts_it()
        }
    }
    print suite ": " passed + 0 " passed, " failed + 0 " failed"
    exit failed > 0
}
