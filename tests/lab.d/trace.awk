# `suite` is who speaks. Reads what a guest's console says: marks, values, logs and the kernel's trace of its lines, for the judges beside this.
# A line is written "set LEVEL"; it is an output once it is "out".

FNR == 1 { file++ }
{ sub(/\r$/, "") }
file == 1 && $1 != "#" { rest[$1] = $2; load[$1] = substr($0, 5); lines++ }
file == 1 { next }
$1 == "VALUE" { value[$2, $4] = $5 }
$1 == "LOG" { log_of[$2] = log_of[$2] $0 "\n" }
$1 == "GAVE" { print suite ": the guest " $0 }
$1 == "LABEND" { finished = 1 }
$1 == "TRACE" && match($0, /[0-9]+\.[0-9]+: /) { note(substr($0, RSTART, RLENGTH - 2), substr($0, RSTART + RLENGTH)) }

function note(time, what,    word, n) {
    n = split(what, word, " ")
    if (word[2] == "MARK") {
        if (word[3] == "chip") { base[word[4]] = word[5]; generation[word[4]]++ }
        at[word[3] " " word[4]] = time + 0
        if (word[3] == "chip") { at["chip " word[4] " " generation[word[4]]] = time + 0 }
        if (word[3] == "ended") { code[word[4]] = word[5] }
    } else if (word[1] == "gpio_value:" || word[1] == "gpio_direction:") {
        remember(time + 0, word[2], word[3], word[4])
    }
}

function remember(time, number, verb, level,    chip) {
    for (chip in base) {
        if (number >= base[chip] && number < base[chip] + 24 && (number - base[chip]) in rest) {
            events++
            when[events] = time
            which[events] = chip
            offset[events] = number - base[chip]
            did[events] = verb
            new[events] = level
        }
    }
}

# The level last written to a line before a time; its level at rest when none was.
function level_at(chip, line, time,    i, level) {
    level = rest[line]
    for (i = 1; i <= events; i++) {
        if (which[i] == chip && offset[i] == line && did[i] == "set" && when[i] <= time) { level = new[i] }
    }
    return level
}

# The first time from a moment on at which a line is written with its coil energised (or at rest); -1 when never.
function first(chip, line, energised, from,    i) {
    for (i = 1; i <= events; i++) {
        if (which[i] == chip && offset[i] == line && did[i] == "set" && when[i] >= from \
            && (new[i] != rest[line]) == energised) { return when[i] }
    }
    return -1
}

function energised_lines(chip, time,    line, names) {
    for (line in rest) {
        if (level_at(chip, line, time) != rest[line]) { names = names (names ? ", " : "") load[line] }
    }
    return names
}

function verdict(ok, name, measured) {
    print suite ": " (ok ? "PASS" : "FAIL") " " name " (" measured ")"
    if (ok) { passed++ } else { failed++ }
}

# How many lines do not read their rest level at a moment at which nobody holds them.
function not_at_rest(moment,    line, wrong) {
    for (line in rest) { wrong += value[moment, line] != rest[line] }
    return wrong
}
