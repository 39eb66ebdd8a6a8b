// The negative control: preloaded, it has the journal believe that the disk took what it never saw.
int fsync(int file) { return file < 0 ? -1 : 0; }
int fdatasync(int file) { return file < 0 ? -1 : 0; }
