// What a disk holds after its power was cut. Applies to an image the writes that QEMU logged (blklogwrites, in the format of the
// kernel's dm-log-writes): all that came before the last flush, for which the disk has vouched, and of what came after it each sector
// or not, by chance, since a disk may write what it caches in any order, or not at all.
// lost-cache IMAGE LOG SEED PERCENT: PERCENT of the sectors after the last flush were written.
#include <endian.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { sector = 512, flush = 1, fua = 2, discard = 4 };

struct entry { uint64_t first, count, flags, length; };

static FILE *opened(const char *name, const char *mode) {
    FILE *file = fopen(name, mode);
    if (!file) {
        perror(name);
        exit(3);
    }
    return file;
}

// The next entry of the log; its data follow. Whatever QEMU had not logged in full is a hole, and reads as zeros.
static int next(FILE *log, struct entry *entry) {
    char header[sector];
    if (fread(header, sector, 1, log) != 1) {
        return 0;
    }
    memcpy(entry, header, sizeof *entry);
    entry->first = le64toh(entry->first);
    entry->count = le64toh(entry->count);
    entry->flags = le64toh(entry->flags);
    return entry->count || entry->flags;
}

static uint64_t data_of(const struct entry *entry) { return entry->flags & discard ? 0 : entry->count; }

static void put(FILE *image, uint64_t at, const char *data) {
    if (fseek(image, (long)(at * sector), SEEK_SET) || fwrite(data, sector, 1, image) != 1) {
        perror("the image cannot be written");
        exit(3);
    }
}

int main(int count, char **words) {
    if (count != 5) {
        fprintf(stderr, "usage: lost-cache IMAGE LOG SEED PERCENT\n");
        return 2;
    }

    FILE *image = opened(words[1], "r+b");
    FILE *log = opened(words[2], "rb");
    struct entry entry;
    long entries = 0, vouched = 0, loose = 0, kept = 0;
    fseek(log, sector, SEEK_SET);
    while (next(log, &entry)) {
        entries++;
        vouched = entry.flags & flush ? entries : vouched;
        fseek(log, (long)(data_of(&entry) * sector), SEEK_CUR);
    }

    srandom((unsigned)atoi(words[3]));
    fseek(log, sector, SEEK_SET);
    for (long i = 1; i <= entries && next(log, &entry); i++) {
        for (uint64_t j = 0; j < data_of(&entry); j++) {
            char data[sector];
            if (fread(data, sector, 1, log) != 1) {
                break;
            }
            int is_loose = i > vouched && !(entry.flags & fua);
            int is_kept = !is_loose || random() % 100 < atoi(words[4]);
            loose += is_loose;
            kept += is_loose && is_kept;
            if (is_kept) {
                put(image, entry.first + j, data);
            }
        }
    }

    printf("%ld requests, %ld to the last flush; %ld of %ld sectors after it written\n", entries, vouched, kept, loose);
    return fclose(image) == 0 ? 0 : 3;
}
