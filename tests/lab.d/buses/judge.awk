# Judges a run of the buses' guest: one line for each proof, and a last one that counts.
# Read first: `trace.awk`; then `lines`, then the guest's console. The registers of the expander are two directions, 1 for an input, and
# two latches: line 3 is a light that a low level energises, line 12 one that a high level does.

$1 == "DOCTOR" { doctor = doctor $0 "\n" }
$1 == "BME280" { bme280 = bme280 $0 "\n" }
$1 == "REGISTERS" { registers[$2] = $3 " " $4 " " $5 " " $6; second[$2] = $7 }

function shows(moment, latches) { return registers[moment] == "0xf7 0xef " latches }

function reads_what_is_planted() {
    verdict(doctor ~ /air temperature: says 25\.0 °C/ && doctor ~ /air humidity: says 50 %/ && doctor ~ /reservoir level: says 200 mm/ \
        && log_of["a"] ~ /the air is at 60\.0 °C/, "it reads what is planted in an SHT3x and an ADS1115",
        "25.0 and 60.0 °C, 50 %, and 200 mm at 1.5 V")
}

function reads_the_light() {
    verdict(doctor ~ /tier 1 light level: says 28067 lx/, "it reads what is planted in a BH1750", "28067 lx, its maker's example")
}

function drives_the_other_expander() {
    verdict(second["lit"] == "0xdf" && second["hot"] == "0xff" && second["cut"] == "0xdf" && second["ended"] == "0xff",
        "it drives the lines of a PCF8574", "lit: " second["lit"] "; too hot for lights: " second["hot"])
}

function reads_the_other_part_for_air() {
    verdict(bme280 ~ /air temperature: says 25\.1 °C/ && bme280 ~ /air humidity: says 55 %/, "it reads what is planted in a BME280",
        "25.08 °C and 55 % of raw values and a calibration")
}

function drives_the_expander() {
    verdict(shows("lit", "0x00 0x10") && shows("hot", "0x08 0x00"), "it drives the registers of an MCP23017",
        "lit: " registers["lit"] "; too hot for lights: " registers["hot"])
}

function a_hanging_bus_delays_nothing(    fell, off) {
    fell = at["float a"]
    off = first("a", 0, 0, fell)
    verdict(level_at("a", 0, fell) != rest[0] && off > 0 && off - fell < 0.1 && log_of["a"] !~ / late/,
        "a bus that hangs makes no scan late",
        sprintf("%.0f s into it a float stopped its pump in %.0f ms; the scan comes every 500 ms", fell - at["hang a"],
            (off - fell) * 1000))
}

function what_hangs_grows_unknown() {
    verdict(log_of["a"] ~ /air temperature: unknown, because its reading is stale/ && log_of["a"] ~ /reservoir level: unknown/ \
        && log_of["a"] ~ /Alarm shelf\/air temperature\/reading-unknown: unacknowledged/ && shows("hung", "0x08 0x00"),
        "what a hanging bus said grows stale, an alarm says so, and lights go out", registers["hung"])
}

function a_lost_expander_is_a_safe_state(    before, off) {
    before = energised_lines("a", at["cut a"])
    off = first("a", 0, 0, at["cut a"])
    verdict(before ~ /pump/ && off > 0 && off - at["cut a"] < 2 && log_of["a"] ~ /Alarm controller\/scan-fault: unacknowledged/ \
        && shows("cut", "0x00 0x10"), "an expander that does not answer is an alarm, and the board's lines are made safe",
        sprintf("%s energised; off after %.1f s; what the expander holds stays: %s", before, off - at["cut a"], registers["cut"]))
}

function it_is_taken_up_again() {
    verdict(shows("mended", "0x08 0x00") && shows("again", "0x00 0x10") && log_of["a"] ~ /air temperature: known.*air temperature: known/,
        "what answers again is made safe first and then driven", registers["mended"] "; " registers["again"])
}

function ends_at_rest() {
    verdict(code["a"] == 0 && shows("ended", "0x08 0x00"), "an end leaves the expander's lines at rest", registers["ended"])
}

END {
    if (!finished) { verdict(0, "the guest lives to its end", "no end mark on its console") }
    else {
        reads_what_is_planted()
        reads_the_other_part_for_air()
        reads_the_light()
        drives_the_expander()
        drives_the_other_expander()
        a_hanging_bus_delays_nothing()
        what_hangs_grows_unknown()
        a_lost_expander_is_a_safe_state()
        it_is_taken_up_again()
        ends_at_rest()
    }
    print suite ": " passed + 0 " passed, " failed + 0 " failed"
    exit failed > 0
}
