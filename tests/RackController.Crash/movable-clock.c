/* A wall clock that a test moves while the program runs: adds the nanoseconds that stand in the file MOVABLE_CLOCK, in the machine's
   order, to what CLOCK_REALTIME says. Monotonic clocks stay as they are, as they do when somebody sets a clock. To be preloaded.
   Debian's libfaketime does the same, but cost each start a second of the kernel's time and left two files in /dev/shm at each kill. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <stdint.h>
#include <stdlib.h>
#include <sys/mman.h>
#include <sys/syscall.h>
#include <time.h>
#include <unistd.h>

static const volatile int64_t none = 0;
static const volatile int64_t *offset_ns = &none;
static int (*kernel_clock)(clockid_t, struct timespec *);

__attribute__((constructor)) static void begin(void)
{
    const char *path = getenv("MOVABLE_CLOCK");
    int file = path ? open(path, O_RDONLY | O_CLOEXEC) : -1;
    void *page = file < 0 ? MAP_FAILED : mmap(NULL, sizeof(int64_t), PROT_READ, MAP_SHARED, file, 0);
    kernel_clock = (int (*)(clockid_t, struct timespec *))dlsym(RTLD_NEXT, "clock_gettime");
    if (page != MAP_FAILED)
        offset_ns = page;
}

int clock_gettime(clockid_t clock, struct timespec *time)
{
    int answer = kernel_clock ? kernel_clock(clock, time) : (int)syscall(SYS_clock_gettime, clock, time);
    if (answer == 0 && clock == CLOCK_REALTIME) {
        int64_t ns = time->tv_sec * INT64_C(1000000000) + time->tv_nsec + *offset_ns;
        time->tv_sec = ns / 1000000000;
        time->tv_nsec = ns % 1000000000;
    }
    return answer;
}
