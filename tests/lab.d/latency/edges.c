// Moves the simulated contacts of the latency lab, and plays the program that its figures are held against.
//   edges wait CHIP IN OUT            waits for each edge of one line of the chip and writes its level to another
//   edges move LINES RACKS COUNT NAME drops the low floats of racks whose pump runs, one at a time, COUNT times. LINES is the simulator's
//                                     folder; rack N has its pump on line 2N and its float on line 2N + 1, and IN follows the last.
// When it moves a contact it says so in the kernel's trace, where the kernel says when a relay's line is written.
#include <fcntl.h>
#include <linux/gpio.h>
#include <poll.h>
#include <sched.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

static const char *lines;
static int trace;

static int checked(int answer, const char *what) {
    if (answer < 0) {
        perror(what);
        exit(1);
    }
    return answer;
}

static int request(int chip, unsigned line, unsigned long long flags) {
    struct gpio_v2_line_request wanted = { .offsets = { line }, .num_lines = 1, .consumer = "baseline", .config.flags = flags };
    checked(ioctl(chip, GPIO_V2_GET_LINE_IOCTL, &wanted), "a line cannot be had");
    return wanted.fd;
}

static int wait_for_edges(const char *device, unsigned in, unsigned out) {
    int chip = checked(open(device, O_RDWR), device);
    int output = request(chip, out, GPIO_V2_LINE_FLAG_OUTPUT);
    struct pollfd input = { request(chip, in, GPIO_V2_LINE_FLAG_INPUT | GPIO_V2_LINE_FLAG_EDGE_RISING | GPIO_V2_LINE_FLAG_EDGE_FALLING),
                            POLLIN, 0 };
    while (poll(&input, 1, -1) > 0) {
        struct gpio_v2_line_event event;
        checked((int)read(input.fd, &event, sizeof event), "an edge cannot be read");
        struct gpio_v2_line_values values = { .bits = event.id == GPIO_V2_LINE_EVENT_RISING_EDGE, .mask = 1 };
        checked(ioctl(output, GPIO_V2_LINE_SET_VALUES_IOCTL, &values), "a line cannot be written");
    }
    return 1;
}

static int attribute(int line, const char *name, int flags) {
    char path[256];
    snprintf(path, sizeof path, "%s/sim_gpio%d/%s", lines, line, name);
    return checked(open(path, flags), path);
}

static int is_low(int line) {
    char level = 0;
    int file = attribute(line, "value", O_RDONLY);
    checked((int)read(file, &level, 1), "a level cannot be read");
    close(file);
    return level == '0';
}

static void pull(int line, const char *to) {
    int file = attribute(line, "pull", O_WRONLY);
    checked((int)write(file, to, strlen(to)), "a line cannot be pulled");
    close(file);
}

static void say(const char *name, const char *what, int number) {
    char text[80];
    int length = snprintf(text, sizeof text, "MARK %s %s %d", name, what, number);
    checked((int)write(trace, text, (size_t)length), "the trace takes no mark");
}

static void sleep_up_to(long ms) { usleep((useconds_t)(random() % (ms * 1000))); }

// A rack whose pump runs, where there is one: coils are energised by a low level.
static int running(int racks) {
    int first = (int)(random() % racks);
    for (int i = 0; i < racks; i++) {
        int rack = (first + i) % racks;
        if (is_low(2 * rack)) {
            return rack;
        }
    }
    return -1;
}

static void drop_float(int rack, const char *name) {
    say(name, "fall", rack);
    pull(2 * rack + 1, "pull-up");
    for (int i = 0; i < 600 && is_low(2 * rack); i++) {
        usleep(5000);
    }
    pull(2 * rack + 1, "pull-down");
}

static int move(int racks, int count, const char *name) {
    struct sched_param before_all = { .sched_priority = 50 };
    checked(sched_setscheduler(0, SCHED_FIFO, &before_all), "no real-time priority");
    trace = checked(open("/sys/kernel/tracing/trace_marker", O_WRONLY), "trace_marker");
    for (int i = 0, in_vain = 0; i < count && in_vain < 900; ) {
        sleep_up_to(150);
        say(name, "base", i);
        pull(2 * racks, is_low(2 * racks) ? "pull-up" : "pull-down");
        sleep_up_to(150);
        int rack = running(racks);
        if (rack < 0) {
            in_vain++;
            continue;
        }
        in_vain = 0;
        i++;
        drop_float(rack, name);
    }
    return 0;
}

int main(int count, char **words) {
    if (count == 5 && strcmp(words[1], "wait") == 0) {
        return wait_for_edges(words[2], (unsigned)atoi(words[3]), (unsigned)atoi(words[4]));
    }
    if (count == 6 && strcmp(words[1], "move") == 0) {
        lines = words[2];
        return move(atoi(words[3]), atoi(words[4]), words[5]);
    }
    fprintf(stderr, "usage: edges wait CHIP IN OUT | edges move LINES RACKS COUNT NAME\n");
    return 2;
}
