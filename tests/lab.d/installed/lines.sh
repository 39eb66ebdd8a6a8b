# For the stories: the simulated chip, and what the kernel says of its lines.
trace=/sys/kernel/tracing
chips=/sys/kernel/config/gpio-sim

mark() { echo "MARK $*" >$trace/trace_marker; }

# A chip of 24 lines, or as many as the argument says, that is not there yet.
prepare_chip() {
    modprobe configfs
    grep -q ' /sys/kernel/config ' /proc/mounts || mount -t configfs config /sys/kernel/config
    insmod /lab/irq_sim.ko
    insmod /lab/gpio-sim.ko
    grep -q " $trace " /proc/mounts || mount -t tracefs trace $trace
    echo mono >$trace/trace_clock
    echo 'get == 0' >$trace/events/gpio/gpio_value/filter
    echo 1 >$trace/events/gpio/enable
    mkdir $chips/a $chips/a/bank
    echo "${1:-24}" >$chips/a/bank/num_lines
    echo lab-a >$chips/a/bank/label
}

line() { echo "/sys/devices/platform/$(cat $chips/a/dev_name)/$(cat $chips/a/bank/chip_name)/sim_gpio$1"; }

# Every relay's wiring pulls its line to the coil's rest; every contact reads that all is well.
bring_up() {
    echo 1 >$chips/a/live
    for number in /sys/class/gpio/gpiochip*; do
        [ "$(cat "$number/label")" = lab-a ] && mark "chip a $(cat "$number/base")"
    done
    while read -r offset rest _; do
        [ "$rest" = 1 ] && [ "$offset" != "#" ] && echo pull-up >"$(line "$offset")/pull"
    done </lab/lines
    for offset in 16 17 18 19; do echo pull-down >"$(line $offset)/pull"; done
}

values() {
    while read -r offset rest _; do
        [ "$offset" = "#" ] || echo "VALUE $1 a $offset $(cat "$(line "$offset")/value")"
    done </lab/lines
}

# Waits, 60 s or as many as the third argument says at most, until a line reads a level.
wait_for_line() {
    file=$(line "$1")/value
    for _ in $(seq $((${3:-60} * 10))); do
        read -r level <"$file"
        [ "$level" = "$2" ] && return
        sleep 0.1
    done
    echo "GAVE UP waiting for line $1 to read $2"
}

pid() { systemctl show --property=MainPID --value rackcontroller; }

# Waits, 60 s at most, until the service says that it is ready, under another process than the one named.
wait_for_service() {
    for _ in $(seq 120); do
        case $(systemctl show --property=ActiveState,MainPID rackcontroller | tr '\n' ' ') in
            *"MainPID=${1:-0} "*) ;;
            *ActiveState=active*) return ;;
        esac
        sleep 0.5
    done
    echo "GAVE UP waiting for the service"
}
